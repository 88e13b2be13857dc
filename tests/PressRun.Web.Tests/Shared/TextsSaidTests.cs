using System.Globalization;
using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Web.Shared.Wording;
using static PressRun.Web.Shared.Wording.Texts;

namespace PressRun.Web.Tests.Shared;

public sealed class TextsSaidTests : IDisposable
{
    private readonly BunitContext page = new();

    public void Dispose() => page.Dispose();

    [Theory]
    [InlineData(0, "0 copies")]
    [InlineData(1, "1 copy")]
    [InlineData(2, "2 copies")]
    public void Words_turn_with_their_number(int number, string said) => Assert.Equal(said, Say(number, $"{number} copy", $"{number} copies"));

    [Fact]
    public void What_fills_a_gap_is_never_read_as_markup()
    {
        var name = "<b onclick='x'>Fern & {0}</b>";
        var shown = Rendered(Put($"<a href='{name}'>to</a> <bdi>{name}</bdi>"));
        Assert.Equal(name, shown.QuerySelector("bdi")!.TextContent);
        Assert.Equal(name, shown.QuerySelector("a")!.GetAttribute("href"));
        Assert.Empty(shown.QuerySelectorAll("b"));
    }

    [Fact]
    public void A_figure_is_set_with_its_unit_apart_and_a_fragment_renders_in_its_gap()
    {
        var format = new PressFormat(Currency.Find("EUR")!, UnitSystem.Metric, CultureInfo.GetCultureInfo("en"));
        RenderFragment field = builder => builder.AddMarkupContent(0, "<input />");
        var shown = Rendered(Put($"<p>Print {field}; a copy weighs <strong>{format.Mass(Mass.FromGrams(52m))}</strong>.</p>"));
        Assert.Equal("Print ; a copy weighs 52g.", shown.QuerySelector("p")!.TextContent);
        Assert.Equal("g", shown.QuerySelector("strong .figure .unit")!.TextContent);
        Assert.NotNull(shown.QuerySelector("p > input"));
    }

    [Fact]
    public void Without_a_translation_a_text_stays_as_it_is() => Assert.Equal("no such text", SayWhole("no such text"));

    private AngleSharp.Dom.IElement Rendered(RenderFragment fragment) => page.Render(builder =>
    {
        builder.OpenElement(0, "div");
        builder.AddContent(1, fragment);
        builder.CloseElement();
    }).Find("div");
}
