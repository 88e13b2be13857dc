using System.Globalization;
using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Shared;

public sealed class DayInputTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 3, 4);

    private readonly CultureInfo before = CultureInfo.CurrentUICulture;

    public void Dispose() => CultureInfo.CurrentUICulture = before;

    [Theory]
    [InlineData("en-GB", "2026-03-04")]
    [InlineData("en-GB", "4/3/2026")]
    [InlineData("en-US", "3/4/2026")]
    [InlineData("en-US", "4.3.2026")]
    [InlineData("de-DE", "04.03.26")]
    [InlineData("en-GB", " 4 March 2026 ")]
    [InlineData("de-DE", "4. März 2026")]
    public void A_day_is_read_as_it_is_usual_and_in_words(string culture, string typed) =>
        Assert.Equal(Day, Typed.Day(typed, CultureInfo.GetCultureInfo(culture)));

    [Theory]
    [InlineData("en", "4 Mar 2026")]
    [InlineData("de", "4. März 2026")]
    public void A_day_is_written_as_the_page_writes_days_and_is_read_so_too(string language, string written)
    {
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);

        Assert.Equal(written, PressFormat.Written(Day));
        Assert.All(Enumerable.Range(0, 365), on => Assert.Equal(Day.AddDays(on), Typed.Day(PressFormat.Written(Day.AddDays(on)), CultureInfo.GetCultureInfo("en-US"))));
    }

    [Fact]
    public async Task What_is_no_day_or_none_that_may_be_is_said_and_the_day_before_it_holds()
    {
        await using var page = new BunitContext();
        var taken = new List<DateOnly>();
        var field = page.Render<DayInput>(set => set.Add(day => day.Value, Day).Add(day => day.From, Day).Add(day => day.ValueChanged, EventCallback.Factory.Create<DateOnly>(this, taken.Add)));

        await field.Find("input[type=text]").ChangeAsync("soon");
        Assert.Contains("Write a day, such as", field.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal("soon", field.Find("input[type=text]").GetAttribute("value"));
        await field.Find("input[type=text]").ChangeAsync("2026-03-03");
        Assert.Contains("from 4 Mar 2026 on", field.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Empty(taken);

        await field.Find("input[type=date]").ChangeAsync("2026-03-09");
        await field.Find("input[type=text]").ChangeAsync("10 Mar 2026");
        Assert.Empty(field.FindAll("[role=alert]"));
        Assert.Equal([new DateOnly(2026, 3, 9), new DateOnly(2026, 3, 10)], taken);
    }
}
