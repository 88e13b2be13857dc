using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Support;

/// <summary>Formats for tests.</summary>
public static class Written
{
    public static PressFormat Metric { get; } = new(ARun.Dollars, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-GB"));

    public static PressFormat Imperial { get; } = new(ARun.Dollars, UnitSystem.Imperial, CultureInfo.GetCultureInfo("en-US"));

    public static PressFormat German { get; } = new(ARun.Dollars, UnitSystem.Metric, CultureInfo.GetCultureInfo("de-DE"));
}
