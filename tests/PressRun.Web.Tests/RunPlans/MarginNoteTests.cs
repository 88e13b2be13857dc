using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class MarginNoteTests
{
    private static readonly CostCurve Curve = ARun.Prepared.Curve(20, 200).Value;

    private static readonly WorkedPlan Plan = new(
        ARun.Prepared, Curve, Curve.DearBands(), LadderJump.Of(Curve), ARun.Prepared.StepsBetween(20, 200).Value, ARun.Prepared.Impose());

    [Fact]
    public void A_dear_quantity_is_told_how_many_more_copies_cost_less_and_why()
    {
        var band = Assert.Single(Plan.Bands);
        var note = Notes(band.To)[0];
        Assert.Equal(band.Better, note.Take);
        Assert.StartsWith("1 more copy costs ", note.Strong, StringComparison.Ordinal);
        Assert.Contains("delivery is free", note.Rest, StringComparison.Ordinal);
        Assert.True(note.LookHere);
    }

    [Fact]
    public void Away_from_it_the_band_has_its_letter_and_leads_nowhere()
    {
        var note = Assert.Single(Notes(30), note => note.Key is not null);
        Assert.Equal('a', note.Key);
        Assert.Null(note.Take);
    }

    [Fact]
    public void Each_letter_of_the_picture_has_its_note_however_many_there_are()
    {
        var curve = new CostCurve(20, [.. Enumerable.Range(20, 66).Select(quantity => quantity + (quantity % 10 is 1 or 2 ? 5m : 0m))]);
        var plan = new WorkedPlan(ARun.Prepared, curve, curve.DearBands(), [], [], ARun.Prepared.Impose());

        Assert.Equal("abcdefg", string.Concat(MarginNote.Of(plan, plan.At(190).Value, [], id => id, Written.Metric).Select(note => note.Key).OfType<char>()));
    }

    [Fact]
    public void Each_of_many_bands_tells_its_reason_whichever_quantity_is_looked_at()
    {
        var discounts = Enumerable.Range(1, 12).Select(place => new DiscountStep(20m * place, place / 100m)).ToList();
        var job = ARun.Job with { Shop = ARun.Shop with { Order = ARun.Shop.Order with { Discounts = discounts } } };
        var plan = WorkedPlan.Of(PreparedJob.Prepare(job).Value, new ShownRange(20, 300, false)).Value;

        Assert.True(plan.Bands.Count > 6);
        Assert.All(Enumerable.Range(20, 270), quantity => Assert.All(
            MarginNote.Of(plan, plan.At(quantity).Value, [], id => id, Written.Metric).Where(note => note.Key is not null), note => Assert.NotEmpty(note.Rest)));
    }

    [Fact]
    public void Where_the_cost_fell_before_a_band_ends_the_reason_is_told_of_where_it_fell()
    {
        // Two copies share each sheet: at the step's first quantity the cost falls, and the next one costs the same.
        var sheet = ARun.Shop.Sheets[0];
        var job = ARun.Job with
        {
            Edition = ARun.Edition() with { Parts = [ARun.Edition().Parts[0], ARun.Edition().Parts[1]] },
            Shop = ARun.Shop with
            {
                Sheets = [sheet with { Width = 2 * sheet.Width, Height = sheet.Height }],
                Order = OrderRules.None,
                Print = [ARun.Shop.Print[0] with { Steps = [new PriceStep(1, 0.08m), new PriceStep(700, 0.04m)] }, ARun.Shop.Print[1]],
            },
        };
        var plan = WorkedPlan.Of(PreparedJob.Prepare(job).Value, new ShownRange(20, 300, false)).Value;

        Assert.NotEmpty(plan.Bands);
        Assert.All(MarginNote.Of(plan, plan.At(20).Value, [], id => id, Written.Metric).Where(note => note.Key is not null), note => Assert.Contains("impressions in black", note.Rest, StringComparison.Ordinal));
    }

    [Fact]
    public void What_a_shop_sells_beyond_the_picture_is_named_with_what_keeps_it_out()
    {
        var heaviest = ARun.Prepared.Estimate(150).Value.Freight.Mass;
        var job = ARun.Job with { Shop = ARun.Shop with { Quantities = [25, 50, 100, 200], Order = OrderRules.None with { Delivery = new Delivery([new MassStep(heaviest, 15m)], null, null) } } };
        var prepared = PreparedJob.Prepare(job).Value;
        var plan = WorkedPlan.Of(prepared, ShownRange.Of(prepared, 100, null)).Value;

        var note = Assert.Single(MarginNote.Of(plan, plan.At(100).Value, [], id => id, Written.Metric), note => note.Rest.StartsWith("The shop prints 25, 50, 100 copies", StringComparison.Ordinal));

        Assert.Contains("It sells 200 too, but those cannot be worked out: The freight weighs", note.Rest, StringComparison.Ordinal);
    }

    [Fact]
    public void One_more_copy_has_its_price_and_free_delivery_its_distance()
    {
        var notes = Notes(30);
        Assert.Contains(notes, note => note.Rest.StartsWith("One more copy costs ", StringComparison.Ordinal));
        var free = Plan.Steps.First(step => step.Kind == StepKind.FreeDelivery).Quantity;
        Assert.Contains(notes, note => note.Rest.Contains($"free at {free} copies, {free - 30} more", StringComparison.Ordinal));
    }

    [Fact]
    public void Past_the_last_step_nothing_is_promised() =>
        Assert.DoesNotContain(Notes(190), note => note.Rest.Contains("free", StringComparison.Ordinal) && note.Key is null);

    private static IReadOnlyList<MarginNote> Notes(int quantity) => MarginNote.Of(Plan, Plan.At(quantity).Value, [], id => id, Written.Metric);
}
