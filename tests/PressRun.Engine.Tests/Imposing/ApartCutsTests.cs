using CsCheck;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Imposing;

public sealed class ApartCutsTests
{
    [Fact]
    public void A_knife_that_follows_the_list_parts_every_sheet_into_its_pieces() => ImposedGen.Any.Sample(run =>
    {
        foreach (var sheet in run.Sheets)
        {
            var left = Follow(sheet, ApartCuts.Of(sheet));
            Assert.All(sheet.Stacks, stack => Assert.Single(left, box => Near(box, stack.Place.Box)));
        }
    });

    [Fact]
    public void The_furthest_cut_comes_first_and_what_the_margin_left_comes_off_turned_round()
    {
        // Two pieces of 100 × 200 beside each other, 4 apart, in the middle of 220 × 230: margins of 8 and 15.
        var sheet = Sheet(width: 220, height: 230) with { Gutter = Mm(4) };
        var made = ImposedGen.Made(Edition(Binding.Loose, Part(2)), sheet, Layout.StepAndRepeat, 10).Sheets[0];
        Assert.Equal(
            [
                (FenceSide.Left, 212m, 1), (FenceSide.Left, 112m, 1), (FenceSide.Left, 108m, 1), (FenceSide.Right, 100m, 1),
                (FenceSide.Top, 215m, 2), (FenceSide.Bottom, 200m, 2),
            ],
            ApartCuts.Of(made).Select(cut => (cut.Against, cut.Fence.Millimetres, cut.Strips)));
    }

    [Fact]
    public void A_piece_as_large_as_its_sheet_is_not_cut() =>
        Assert.Empty(ApartCuts.Of(ImposedGen.Made(Edition(Binding.Saddle, Part(4)), Sheet(), Layout.StepAndRepeat, 10).Sheets[0]));

    private sealed record Paper(Box Box, IReadOnlyList<Place> Places);

    // Each run of cuts through the same letters is made on every strip with these letters; what is cut off is laid aside.
    private static List<Box> Follow(ImposedSheet sheet, IReadOnlyList<ApartCut> cuts)
    {
        List<Paper> table = [new(new Box(Length.Zero, Length.Zero, sheet.Sheet.Width, sheet.Sheet.Height), [.. sheet.Stacks.Select(stack => stack.Place)])];
        foreach (var group in cuts.GroupBy(cut => (string.Join(' ', cut.Letters), cut.Against is FenceSide.Left or FenceSide.Right)))
        {
            var letters = group.First().Letters.ToHashSet();
            var strips = table.Where(paper => paper.Places.Count > 0 && paper.Places.All(place => letters.Contains(place.Letter))).ToList();
            Assert.Equal(group.First().Strips, strips.Count);
            foreach (var strip in strips)
            {
                table.Remove(strip);
                var held = strip.Box;
                foreach (var cut in group)
                {
                    var (stays, falls) = Cut(held, cut);
                    table.Add(new Paper(falls, [.. strip.Places.Where(place => falls.Holds(place.Box.Middle))]));
                    held = stays;
                }

                table.Add(new Paper(held, [.. strip.Places.Where(place => held.Holds(place.Box.Middle))]));
            }
        }

        return [.. table.Where(paper => paper.Places.Count == 1).Select(paper => paper.Box)];
    }

    private static (Box Stays, Box Falls) Cut(Box box, ApartCut cut)
    {
        var width = box.Width - cut.Fence;
        var height = box.Height - cut.Fence;
        Assert.True((cut.Against is FenceSide.Left or FenceSide.Right ? width : height) > Length.Zero, "There is something to cut off.");
        return cut.Against switch
        {
            FenceSide.Left => (box with { Width = cut.Fence }, box with { Left = box.Left + cut.Fence, Width = width }),
            FenceSide.Right => (box with { Left = box.Left + width, Width = cut.Fence }, box with { Width = width }),
            FenceSide.Top => (box with { Height = cut.Fence }, box with { Top = box.Top + cut.Fence, Height = height }),
            _ => (box with { Top = box.Top + height, Height = cut.Fence }, box with { Height = height }),
        };
    }

    private static bool Near(Box one, Box other) =>
        new[] { one.Left - other.Left, one.Top - other.Top, one.Width - other.Width, one.Height - other.Height }.All(apart => Math.Abs(apart.Micrometres) <= 2m);
}
