using System.Globalization;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;

namespace PressRun.Data.Tests.Import;

public sealed class PostageTableTests
{
    private static readonly CellManners Metric = new(CultureInfo.GetCultureInfo("en"), UnitSystem.Metric);

    [Fact]
    public void Rows_of_one_service_and_day_are_its_steps_whether_repeated_or_left_empty()
    {
        var read = new PostageShape().Read(
            [
                Row("Letter", "home", "2026-01-01", "100 g", "0.95"), Row("", "", "", "250", "1.60"), Row("Letter", "home", "2026-01-01", "1 kg", "3"),
                Row("Letter", "abroad", "2026-01-01", "100", "2.10"),
            ],
            Metric);

        Assert.Empty(read.Problems);
        Assert.Equal([3, 1], read.Things.Select(thing => thing.Thing.Item.Steps.Count));
    }

    [Fact]
    public void A_step_that_does_not_rise_is_told_at_its_own_row()
    {
        var read = new PostageShape().Read([Row("Letter", "home", "2026-01-01", "250", "1"), Row("", "", "", "100", "2")], Metric);

        var problem = Assert.Single(read.Problems);
        Assert.Equal((1, 4), (problem.Row, problem.Column));
    }

    [Fact]
    public void Steps_of_one_service_that_lie_apart_are_refused()
    {
        var read = new PostageShape().Read(
            [
                Row("Letter", "home", "2026-01-01", "100", "1"), Row("Flat", "home", "2026-01-01", "100", "2"), Row("Letter", "home", "2026-01-01", "250", "3"),
            ],
            Metric);

        Assert.Equal(2, Assert.Single(read.Problems).Row);
    }

    [Fact]
    public void A_service_that_names_no_region_goes_to_the_usual_one_and_its_steps_go_on_with_it()
    {
        string[][] rows = [Row("Letter", "", "2026-01-01", "100 g", "0.95"), Row("", "", "", "250", "1.60"), Row("Letter", "", "2026-01-01", "1 kg", "3")];

        var service = Assert.Single(new PostageShape().Read(rows, Metric).Things).Thing.Item;
        Assert.Equal(("home", 3), (service.Region, service.Steps.Count));
        Assert.Equal("Inland", Assert.Single(new PostageShape(PostageShape.UsualRegion([service with { Region = "Inland" }])).Read(rows, Metric).Things).Thing.Item.Region);
        Assert.Equal("home", PostageShape.UsualRegion([]));
    }

    [Fact]
    public void A_step_that_repeats_the_services_name_alone_takes_its_region_and_day_wherever_it_stands()
    {
        string[][] rows =
        [
            Row("Letter", "abroad", "2026-01-01", "100 g", "2.10"), Row("Flat", "home", "2026-01-01", "100", "2"), Row("letter", "", "", "250", "3.60"), Row("Letter", "", "2026-01-01", "500", "5"),
            Row("Letter", "", "2026-07-01", "100", "2.20"),
        ];

        var shape = new PostageShape();
        var read = shape.Read(shape.Gathered(rows, row => row), Metric);

        Assert.Empty(read.Problems);
        Assert.Equal(
            [("abroad", 1, 3), ("home", 1, 1), ("home", 7, 1)],
            read.Things.Select(thing => (thing.Thing.Item.Region, thing.Thing.Item.ValidFrom.Month, thing.Thing.Item.Steps.Count)));
    }

    private static string[] Row(string name, string region, string from, string most, string price) =>
        ["", name, region, from, most, price, "", "", "", "", "", "", ""];
}
