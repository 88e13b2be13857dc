using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.Bindery;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Support;

/// <summary>The invented run as the table sees it.</summary>
public static class ABench
{
    public static readonly PressFormat Format = new(ARun.Dollars, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-US"));

    public static BinderyView View(
        Func<BenchRates, BenchRates>? bench = null, Func<Shop, Shop>? shop = null, Func<EditionRecord, EditionRecord>? edition = null)
    {
        var source = Records.Source();
        source = source with
        {
            Bench = bench?.Invoke(source.Bench) ?? source.Bench,
            PriceList = shop?.Invoke(source.PriceList) ?? source.PriceList,
            Edition = edition?.Invoke(source.Edition) ?? source.Edition,
        };
        return BinderyService.Of(new TitleRecord(Guid.NewGuid(), "marsh-letters", "Marsh Letters", "", "", "", false, 1), source, BenchLimits.Usual);
    }
}
