using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using PressRun.Web.Shared.Wording;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>What an edition's page says that the book comes to.</summary>
internal static class Comes
{
    /// <summary>The figure beside a heading of the list.</summary>
    public static ILocator To(IPage page, string what) => page.Locator($".consequences dt:text-is(\"{what}\") + dd");

    /// <summary>Compares every figure of the list with what the engine says of a plan.</summary>
    public static async Task ToWhatTheEngineSaysAsync(IPage page, JobSource source, PressFormat format)
    {
        var estimate = Reckoned.At(source);
        var totals = estimate.Totals;
        await Expect(To(page, "The run costs, planned")).ToContainTextAsync(Whole(format.Money(totals.LandedCost)));
        await Expect(To(page, "A copy costs, planned")).ToContainTextAsync(Whole(format.Money(estimate.UnitCost)));
        await Expect(To(page, "Sheets")).ToContainTextAsync(Whole(format.Count(estimate.Parts.Sum(part => part.OnSheets!.Sheets))));
        await Expect(To(page, "A copy weighs")).ToContainTextAsync(Whole(format.Mass(estimate.Copy.Mass).ToString()));
        await Expect(To(page, "It is thick")).ToContainTextAsync(Whole(format.Thickness(estimate.Copy.Thickness).ToString()));
    }

    // What it was before follows it ("3.10was 2.90"), so the figure is held to the beginning. Where a unit is set apart by its margin no space stands.
    private static Regex Whole(string figure) => new($@"^\s*{Loose(figure)}(\s*was\b|\s*$)");

    /// <summary>A figure's words, with or without spaces between them.</summary>
    public static string Loose(string words) => string.Join(@"\s*", words.Split(' ').Select(Regex.Escape));
}
