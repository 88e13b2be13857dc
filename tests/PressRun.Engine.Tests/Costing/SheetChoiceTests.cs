using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class SheetChoiceTests
{
    private static readonly Job TwoSheets = Plain().With(shop => shop with
    {
        Sheets = [Sheet(), Sheet("double", 200, 400)],
        Print = [Black(0.10m), Black(0.15m, "double")],
        Paper = [PaperAt(0.05m), PaperAt(0.08m, sheet: "double")],
    });

    [Fact]
    public void A_part_takes_the_sheet_on_which_print_and_paper_cost_least()
    {
        Assert.Equal("double", SheetOf(TwoSheets)); // 50 × 0.38 against 100 × 0.25.
        Assert.Equal("square", SheetOf(TwoSheets with { Quantity = 1 }));
    }

    [Fact]
    public void Of_sheets_that_cost_the_same_the_first_listed_is_taken() =>
        Assert.Equal("square", SheetOf(TwoSheets.With(shop => shop with { Print = [Black(0.10m), Black(0.20m, "double")], Paper = [PaperAt(0.05m), PaperAt(0.10m, sheet: "double")] })));

    [Fact]
    public void The_charges_compared_are_not_rounded()
    {
        var job = TwoSheets.With(shop => shop with { Print = [Black(0.0012m), Black(0.0011m, "double")], Paper = [PaperAt(0m), PaperAt(0m, sheet: "double")] });
        Assert.Equal("double", SheetOf(job with { Quantity = 1 }));
    }

    [Fact]
    public void Each_part_chooses_as_if_it_were_alone_even_where_a_shared_step_would_be_cheaper()
    {
        // Together the parts would reach the step of the square sheet; alone neither does, and both take the other.
        var job = TwoSheets
            .With(shop => shop with { Print = [Black(0.10m) with { Steps = Steps((1, 0.10m), (300, 0.001m)) }, Black(0.15m, "double")] })
            .WithEdition(edition => edition with { Parts = [Part(4, "cover"), Part(4)] });
        Assert.Equal(["double", "double"], job.Estimate().Parts.Select(part => part.OnSheets!.SheetId));
    }

    [Fact]
    public void A_sheet_named_by_the_part_is_taken_even_where_it_is_dearer() =>
        Assert.Equal("square", SheetOf(TwoSheets.WithEdition(edition => edition with { Parts = [Part(4) with { SheetId = "square" }] })));

    [Fact]
    public void A_sheet_without_a_price_for_an_ink_or_the_paper_does_not_count()
    {
        Assert.Equal("square", SheetOf(TwoSheets.With(shop => shop with { Print = [Black(0.10m)] })));
        Assert.Equal("square", SheetOf(TwoSheets.With(shop => shop with { Paper = [PaperAt(0.05m)] })));
    }

    [Fact]
    public void A_part_that_no_sheet_takes_is_refused_with_the_reason_for_every_sheet()
    {
        var job = TwoSheets.With(shop => shop with { Print = [Black(0.10m)] }).WithEdition(edition => edition with { Page = MmSize(103, 200) });
        var problem = Assert.Single(job.Problems());
        Assert.Equal("$.edition.parts[0]", problem.Path);
        Assert.Contains("too large by 6 mm across", problem.Rule, StringComparison.Ordinal);
        Assert.Contains("no price for black print", problem.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_that_the_shop_does_not_list_is_refused() =>
        Assert.Equal("$.edition.parts[0].sheet", Assert.Single(Plain().WithEdition(edition => edition with { Parts = [Part(4) with { SheetId = "none" }] }).Problems()).Path);

    [Fact]
    public void Every_part_lies_on_a_sheet_no_other_undercuts() => JobGen.Any.Where(job => job.Shop.BookPrices.Count == 0).Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is not { Succeeded: true } outcome)
        {
            return;
        }

        for (var index = 0; index < job.Edition.Parts.Count; index++)
        {
            var part = job.Edition.Parts[index];
            var (estimate, pieces) = (outcome.Value, job.Prepared().Block.Parts[index]);
            var charges = job.Shop.Sheets.Select(sheet => (sheet.Id, Charge: Alone(job, part, pieces, sheet, estimate.CopiesToStart))).ToList();
            Assert.Equal(charges.MinBy(sheet => sheet.Charge).Id, estimate.Parts[index].OnSheets!.SheetId);
        }
    });

    private static decimal Alone(Job job, Part part, PartPieces pieces, Sheet sheet, long started)
    {
        var onSheet = PiecesOnSheet.Count(sheet, pieces.Piece, job.Edition.Bleed)!.Value;
        var sheets = SheetCount.Of(job.Shop.Layout, pieces.Count, onSheet, started).Sheets;
        var impressions = new[] { part.Outside, part.Inside }.Where(ink => ink != Ink.None).GroupBy(ink => ink);
        var print = impressions.Sum(ink =>
        {
            var price = job.Shop.Print.Single(price => price.Ink == ink.Key && price.SheetId == sheet.Id);
            return StepByStep(price.Steps, price.Rule, ink.Count() * sheets);
        });
        var paper = job.Shop.Paper.Single(price => price.StockId == part.StockId && price.SheetId == sheet.Id);
        return print + StepByStep(paper.Steps, paper.Rule, sheets);
    }

    // Unit by unit in blocks between step boundaries.
    private static decimal StepByStep(IReadOnlyList<PriceStep> steps, StepRule rule, long units)
    {
        if (rule == StepRule.AllUnits)
        {
            return units * steps.Last(step => step.From <= units).Each;
        }

        var ends = steps.Skip(1).Select(step => step.From - 1).Append(long.MaxValue);
        return steps.Zip(ends, (step, end) => Math.Max(0, Math.Min(end, units) - step.From + 1) * step.Each).Sum();
    }

    private static string SheetOf(Job job) => job.Estimate().Parts[0].OnSheets!.SheetId;
}
