using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace PressRun.Browser.Tests.Running;

/// <summary>What keeps somebody out of a page: rules of WCAG 2.2 that it breaks, on a table and on a phone, light and dark, and what makes it scroll sideways.</summary>
internal static class Barriers
{
    private const int Table = 1280;
    private const int Phone = 390;

    // The table at a zoom of 200 %, and at 400 %, where one still need not scroll sideways (WCAG 2.2, 1.4.10 Reflow).
    private static readonly int[] Zoomed = [640, 320];

    private static readonly AxeRunOptions Wcag22 = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
        ResultTypes = [ResultType.Violations],
    };

    /// <summary>All of a page as it stands, in words.</summary>
    public static async Task<IReadOnlyList<string>> OfAsync(IPage page)
    {
        var faults = new List<string>();
        foreach (var width in new[] { Table, Phone })
        {
            await page.SetViewportSizeAsync(width, 900);
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme });
                faults.AddRange(await BarriersAsync(page, $"{width} px, {scheme}"));
            }

            faults.AddRange(await StickingOutAsync(page, width));
        }

        foreach (var width in Zoomed)
        {
            await page.SetViewportSizeAsync(width, 900);
            faults.AddRange(await StickingOutAsync(page, width));
        }

        return faults;
    }

    private static async Task<IEnumerable<string>> BarriersAsync(IPage page, string where)
    {
        var result = await page.RunAxe(Wcag22);
        return result.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{where}: {violation.Id}: {violation.Help}: {node.Html}"));
    }

    private static async Task<IEnumerable<string>> StickingOutAsync(IPage page, int width)
    {
        var shown = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
        if (shown <= width)
        {
            return [];
        }

        // What lies in a stretch that scrolls by itself does not widen the page.
        var wide = await page.EvaluateAsync<string[]>(
            """
            most => [...document.querySelectorAll('body *')]
              .filter(e => e.getBoundingClientRect().right > most + 0.5 || e.scrollWidth > e.clientWidth + 0.5 && e.getBoundingClientRect().left + e.scrollWidth > most + 0.5)
              .filter(e => { for (let p = e.parentElement; p && p !== document.body; p = p.parentElement) { if (getComputedStyle(p).overflowX !== 'visible') return false; } return true; })
              .slice(-5).map(e => e.outerHTML.slice(0, 160))
            """,
            width);
        return [$"{width} px: the page scrolls sideways to {shown} px: {string.Join(" | ", wide)}"];
    }
}
