using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Bench;

/// <summary>The order of work is common practice: folded books are stapled flat, then folded; a spine is trimmed before binding, never after.</summary>
public sealed class WorkListTests
{
    [Fact]
    public void What_the_book_needs_and_nobody_names_stands_where_the_trade_does_it()
    {
        var job = Job(Binding.Saddle).WithBench(bench => bench with { Steps = [Step("gather"), Step("my folding"), Step("wrap in paper")] });
        Assert.Equal(
            [
                (WorkKind.CutApart, null), (WorkKind.Collate, "gather"), (WorkKind.Staple, null), (WorkKind.Fold, "my folding"),
                (WorkKind.Other, "wrap in paper"), (WorkKind.Press, null), (WorkKind.Trim, (string?)null),
            ],
            Steps(job).Select(step => (step.Kind, step.Name)));
    }

    [Fact]
    public void Steps_of_the_table_keep_its_order_where_the_trade_has_another()
    {
        var job = Job(Binding.Saddle).WithBench(bench => bench with { Steps = [Step("fold"), Step("stitch")] });
        Assert.Equal(["fold", "stitch"], Steps(job).Select(step => step.Name).OfType<string>());
    }

    [Theory]
    [InlineData(Binding.Side, WorkKind.Staple)]
    [InlineData(Binding.Perfect, WorkKind.Glue)]
    public void A_spine_is_trimmed_before_it_is_bound(Binding binding, WorkKind bound)
    {
        var kinds = Steps(Job(binding).WithEdition(edition => edition with { Trim = new Trim(Mm(3), Mm(3), Mm(3), Mm(2)) })).Select(step => step.Kind).ToList();
        Assert.InRange(kinds.IndexOf(WorkKind.TrimSpine), 0, kinds.IndexOf(bound) - 1);
        Assert.True(kinds.IndexOf(WorkKind.Trim) > kinds.IndexOf(bound), "Head, fore-edge and foot are cut when the book is bound.");
    }

    [Fact]
    public void What_the_shop_does_is_not_done_again()
    {
        var job = Job(Binding.Saddle).With(shop => shop with
        {
            Delivers = Delivered.CutPieces,
            Collates = Collating.Always,
            Finishing = [new Finishing("stitch and fold", FinishingUnit.Copy, 0.1m, 0m)],
        });
        Assert.Equal([WorkKind.Jog, WorkKind.Press, WorkKind.Trim], Steps(job).Select(step => step.Kind));
    }

    [Fact]
    public void Prints_that_the_shop_cuts_to_size_are_not_trimmed_again()
    {
        var loose = Job(Binding.Loose);
        Assert.Contains(WorkKind.Trim, Steps(loose).Select(step => step.Kind));
        var cut = loose.With(shop => shop with { Delivers = Delivered.CutPieces, Finishing = [new Finishing("cutting to size", FinishingUnit.Copy, 0.1m, 0m)] });
        Assert.Equal([WorkKind.Collate, WorkKind.Jog], Steps(cut).Select(step => step.Kind));
    }

    [Theory]
    [InlineData("Guillotine")]
    [InlineData("Cutting sheets")]
    public void Sheets_that_the_shop_guillotines_are_not_cut_apart_again(string operation)
    {
        var kinds = Steps(Job(Binding.Saddle).With(shop => shop with { Finishing = [new Finishing(operation, FinishingUnit.Sheet, 0.1m, 0m)] })).Select(step => step.Kind).ToList();
        Assert.DoesNotContain(WorkKind.CutApart, kinds);
        Assert.Contains(WorkKind.Trim, kinds);
    }

    [Fact]
    public void Of_copies_that_come_bound_only_the_trim_is_left() =>
        Assert.Equal([WorkKind.Jog, WorkKind.Trim], Steps(Job(Binding.Saddle).With(shop => shop with { Delivers = Delivered.UntrimmedCopies })).Select(step => step.Kind));

    [Fact]
    public void A_shop_that_else_hands_over_finished_books_leaves_the_spine_to_a_table_that_binds_and_trims()
    {
        var job = Job(Binding.Side).WithEdition(edition => edition with { Trim = new Trim(Mm(3), Mm(3), Mm(3), Mm(2)) })
            .With(shop => shop with { Delivers = Delivered.TrimmedCopies, Collates = Collating.Always })
            .WithBench(bench => bench with { Steps = [Step("stitch"), Step("trim")] });
        Assert.Equal([WorkKind.TrimSpine, WorkKind.Staple, WorkKind.Press, WorkKind.Trim], Steps(job).Select(step => step.Kind));
    }

    [Fact]
    public void Heavy_covers_are_scored_before_they_are_collated()
    {
        var kinds = WorkList.Of(Job(Binding.Saddle).Prepared(), 10, 10, scored: true).Select(step => step.Kind).ToList();
        Assert.Equal(WorkKind.Score, kinds[kinds.IndexOf(WorkKind.Collate) - 1]);
    }

    [Fact]
    public void Copies_grow_fewer_by_what_usually_spoils_and_never_fewer_than_wanted()
    {
        // 100 started, 2 % spoiled by the shop: 98; 5 % of them folded wrong: 93.1, so 94; 10 %: 83.79, but 90 are wanted.
        var job = Job(Binding.Loose).With(shop => shop with { Spoilage = 0.02m, Delivers = Delivered.CutPieces, Collates = Collating.Always })
            .WithBench(bench => bench with { Steps = [Step("fold", spoilage: 0.05m), Step("press", spoilage: 0.1m), Step("pack")] })
            .WithEdition(edition => edition with { Trim = default });
        Assert.Equal([98, 94, 90], WorkList.Of(job.Prepared(), 100, 90, scored: false).Select(step => step.Copies));
    }

    [Theory]
    [InlineData("Trim the spine", WorkKind.TrimSpine)]
    [InlineData("the spine", WorkKind.TrimSpine)]
    [InlineData("rough-cut spines", WorkKind.TrimSpine)]
    [InlineData("Glue the spine", WorkKind.Glue)]
    [InlineData("score the spine", WorkKind.Score)]
    [InlineData("press the spine", WorkKind.Press)]
    [InlineData("cut apart, glue the spine", WorkKind.CutApart)]
    [InlineData("cut apart", WorkKind.CutApart)]
    [InlineData("cutting to size", WorkKind.CutApart)]
    [InlineData("cut on three sides", WorkKind.Trim)]
    [InlineData("saddle stitch", WorkKind.Staple)]
    [InlineData("under weight", WorkKind.Press)]
    [InlineData("admire", WorkKind.Other)]
    public void A_name_says_what_kind_of_work_it_is(string name, WorkKind kind) => Assert.Equal(kind, Work.Named(name));

    [Fact]
    public void The_list_is_numbered_and_its_minutes_are_those_of_the_estimate() => JobGen.Any.Sample(job =>
    {
        var prepared = job.Prepared();
        if (prepared.Estimate(job.Quantity) is not { Succeeded: true } estimate)
        {
            return;
        }

        var steps = WorkList.Of(prepared, estimate.Value.CopiesToStart, job.Quantity, scored: true);
        Assert.Equal(Enumerable.Range(1, steps.Count), steps.Select(step => step.Number));
        Assert.Equal(estimate.Value.Totals.BenchHours, steps.Sum(step => step.Minutes ?? 0m) / 60m, 12);
        Assert.All(steps, step => Assert.InRange(step.Copies, job.Quantity, estimate.Value.CopiesToStart));
    });

    private static Job Job(Binding binding) => Plain()
        .WithEdition(_ => Edition(binding, Part(4, "cover"), Part(8)) with { Trim = new Trim(Mm(3), Mm(3), Mm(3), default) })
        .With(shop => shop with { Sheets = [Sheet(width: 420, height: 420)] })
        .WithBench(bench => bench with { Steps = [Step("jog")] });

    private static IReadOnlyList<WorkStep> Steps(Job job) => WorkList.Of(job.Prepared(), 120, 100, scored: false);
}
