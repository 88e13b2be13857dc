using CsCheck;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Editions;

public sealed class BindingRulesTests
{
    [Fact]
    public void Ten_pages_to_fold_are_refused_with_eight_and_twelve()
    {
        // PAG-07. Folded sheets carry four pages: ten pages of content become twelve; computed.
        Assert.Equal([8, 12], BindingRules.Nearest(Binding.Saddle, 0, 10));
        var problem = Assert.Single(Plain().WithEdition(edition => edition with { Parts = [Part(10)] }).Problems());
        Assert.Equal(("$.edition.parts[0].pages", "10"), (problem.Path, problem.Value));
        Assert.Contains("8 or 12", problem.Rule, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Binding.Saddle, 0, 2, new[] { 4, 8 })]
    [InlineData(Binding.Saddle, 1, 33, new[] { 32, 36 })]
    [InlineData(Binding.Side, 0, 7, new[] { 6, 8 })]
    [InlineData(Binding.Perfect, 0, 8, new[] { 4 })]
    [InlineData(Binding.Perfect, 1, 31, new[] { 30, 32 })]
    [InlineData(Binding.Loose, 0, -3, new[] { 1, 2 })]
    public void A_refused_page_count_is_answered_with_the_nearest_that_keep_the_rule(Binding binding, int part, int pages, int[] nearest)
    {
        Assert.False(BindingRules.Allows(binding, part, pages));
        Assert.Equal(nearest, BindingRules.Nearest(binding, part, pages));
    }

    [Fact]
    public void The_nearest_counts_are_allowed_and_nothing_nearer_is() =>
        Gen.Select(Gen.Enum<Binding>(), Gen.Int[0, 2], Gen.Int[-10, 10_000]).Sample((binding, part, pages) =>
        {
            if (BindingRules.Allows(binding, part, pages))
            {
                return;
            }

            var nearest = BindingRules.Nearest(binding, part, pages);
            Assert.All(nearest, count => Assert.True(BindingRules.Allows(binding, part, count)));
            Assert.DoesNotContain(Enumerable.Range(pages + 1, Math.Max(0, nearest[^1] - pages - 1)), count =>
                BindingRules.Allows(binding, part, count) && !nearest.Contains(count));
        });

    [Fact]
    public void A_perfect_bound_edition_needs_a_cover_of_four_pages_and_something_inside()
    {
        var alone = Plain().WithEdition(edition => edition with { Binding = Binding.Perfect });
        Assert.Contains("cover", Assert.Single(alone.Problems()).Rule, StringComparison.Ordinal);
        var thick = Plain().WithEdition(edition => edition with { Binding = Binding.Perfect, Parts = [Part(8, "cover"), Part(20)] });
        Assert.Equal("$.edition.parts[0].pages", Assert.Single(thick.Problems()).Path);
    }

    [Fact]
    public void A_folded_edition_has_no_spine_trim()
    {
        var job = Plain().WithEdition(edition => edition with { Trim = new Trim(Length.Zero, Length.Zero, Length.Zero, Mm(1)) });
        Assert.Equal("$.edition.trim.spine", Assert.Single(job.Problems()).Path);
    }

    [Fact]
    public void An_edition_without_parts_or_with_too_many_pages_is_refused()
    {
        Assert.Equal("$.edition.parts", Assert.Single(Plain().WithEdition(edition => edition with { Parts = [] }).Problems()).Path);
        var tooMany = Plain().WithEdition(edition => edition with { Parts = [Part(8000), Part(2004, "more")] });
        Assert.Equal(("$.edition.parts", "10004"), (tooMany.Problems()[0].Path, tooMany.Problems()[0].Value));
    }
}
