using PressRun.Engine.Ladder;
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
