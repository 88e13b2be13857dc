using System.Globalization;
using Bunit;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class SharePageTests
{
    private const string Secret = "abcdefghijklmnopqrstuvwxyzABCDEF";
    private const string Hostile = "\"><script>alert(1)</script><img src=x onerror=alert(2)>";

    // Right-to-left override (UAX #9): unclosed, it would turn all that follows it around.
    private const string Turned = "\u202Eevil";

    private static readonly string[] Cases =
    [
        "Held", "Out", "Agreed", "TurnedDown", "Replaced", "Lapsed", "tried", "said", "refused Try", "refused Ask", "refused Agree", "refused TurnDown", "refused Remark",
    ];

    public static TheoryData<string> AllStates => [.. Cases];

    [Theory]
    [MemberData(nameof(AllStates))]
    public async Task In_no_state_is_there_a_script_or_an_inline_style_and_hostile_words_stay_words(string name)
    {
        await using var page = new BunitContext();
        var shown = Render(page, StateOf(name, AQuote.View(Hostile, events: [Remark(Hostile)])));

        Assert.Empty(shown.FindAll("script, style, iframe, object, embed, img"));
        Assert.All(shown.FindAll("*"), element => Assert.DoesNotContain(
            element.Attributes, attribute => attribute.Name == "style" || attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase)));
        Assert.Equal(Hostile, shown.Find("h1").TextContent);
        Assert.Equal(Hostile, shown.Find(".course .said-words").TextContent);
        Assert.All(shown.FindAll("form"), form => Assert.StartsWith($"q/{Secret}", form.GetAttribute("action"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(ShareForm.Ask)]
    [InlineData(ShareForm.Agree)]
    [InlineData(ShareForm.TurnDown)]
    [InlineData(ShareForm.Remark)]
    public async Task A_refused_form_brings_back_what_was_typed_and_says_why(ShareForm about)
    {
        await using var page = new BunitContext();
        var shown = Render(page, StateOf($"refused {about}", AQuote.View()));

        Assert.Equal("Not so.", shown.Find("[role=alert]").TextContent);
        Assert.Contains(shown.FindAll("input[name=name]"), input => input.GetAttribute("value") == Hostile);
    }

    // The quote may be replaced, or the link answered by somebody else, between reading and sending.
    [Theory]
    [InlineData(ShareForm.Agree)]
    [InlineData(ShareForm.TurnDown)]
    [InlineData(ShareForm.Ask)]
    public async Task What_was_sent_too_late_stays_to_be_taken_along_though_its_form_is_gone(ShareForm about)
    {
        await using var page = new BunitContext();
        var view = AQuote.View();
        var late = StateOf("refused Agree", AQuote.Again(view, view.Whole with { State = QuoteState.Replaced, ReplacedBy = 15 }));
        var shown = Render(page, late with { About = about });

        Assert.Equal("Not so.", shown.Find("#unsent [role=alert]").TextContent);
        Assert.Equal(Hostile, shown.Find("#unsent textarea").TextContent);
    }

    [Theory]
    [InlineData("Held", true)]
    [InlineData("Out", true)]
    [InlineData("Agreed", false)]
    [InlineData("TurnedDown", false)]
    [InlineData("Replaced", false)]
    [InlineData("Lapsed", false)]
    public async Task Only_a_quote_that_stands_open_offers_the_sentence_to_sign(string name, bool offered)
    {
        await using var page = new BunitContext();

        var shown = Render(page, StateOf(name, AQuote.View()));
        Assert.Equal(offered, shown.FindAll("#agree").Count == 1);
        // Who reads it on a phone is led there from the first screen.
        Assert.Equal(offered, shown.FindAll($".to-answer a[href='q/{Secret}#agree']").Count == 1);
    }

    [Fact]
    public async Task What_is_signed_names_the_whole_and_the_signers_own_part_of_it_on_the_screen_and_on_paper()
    {
        await using var page = new BunitContext();
        var view = AQuote.View();
        var shown = Render(page, StateOf("Out", view));

        var signed = $"agree to 100 copies for {view.Format.Sum(view.Quote.Landed)}, of which my part is {view.Format.Sum(view.Bill[1].Amount)}.";
        Assert.Contains(signed, shown.Find("#agree .sign .sentence").TextContent, StringComparison.Ordinal);
        Assert.Equal($"I {signed}", shown.Find("#agree .on-paper .sentence").TextContent);
    }

    [Theory]
    [InlineData(true, "Your part of it is nothing.")]
    [InlineData(false, "Eel Pie Editions pays all of it; your part is nothing.")]
    public async Task Who_carries_no_part_of_the_bill_reads_that_it_is_nothing_and_signs_for_no_more(bool isShared, string said)
    {
        await using var page = new BunitContext();
        var view = AQuote.View();
        var whole = isShared ? view.Whole : view.Whole with { Quote = view.Quote with { Facts = view.Facts with { Bill = [] } } };
        var state = StateOf("Out", AQuote.Again(view, whole));
        var shown = Render(page, state with { Link = state.Link with { Part = null } });

        Assert.Contains(said, shown.Find("main > .sentence").TextContent, StringComparison.Ordinal);
        Assert.Contains($"for {view.Format.Sum(view.Quote.Landed)}, of which I pay nothing.", shown.Find("#agree .sign .sentence").TextContent, StringComparison.Ordinal);
        Assert.Contains(", of which I pay nothing.", shown.Find("#agree .on-paper .sentence").TextContent, StringComparison.Ordinal);
    }

    // Which number is the better one stands first: "more than 300" reads as 300 of the currency.
    [Fact]
    public async Task What_more_copies_cost_is_told_of_the_number_that_is_quoted_and_saves_what_the_run_would_cost_less()
    {
        await using var page = new BunitContext();
        var view = AQuote.View();
        var band = view.Worked!.Bands[0];
        var within = AQuote.Again(view, view.Whole with { Quote = view.Quote with { Quantity = band.From, Landed = view.Worked.Curve.At(band.From) } });
        var (less, costs) = (view.Worked.Curve.At(band.From) - view.Worked.Curve.At(band.Better), view.Format.Money(view.Worked.Curve.At(band.Better)));

        Assert.True(less > 0m);
        Assert.EndsWith($"{band.Better} copies cost {costs}, which is {view.Format.Money(less)} less than {band.From} copies cost.", Render(page, StateOf("Out", within)).Find(".try-bands li").TextContent, StringComparison.Ordinal);
        Assert.Matches($@"{band.Better} copies cost no more than {band.From}( to {band.To})? do\.$", Render(page, StateOf("Out", view)).Find(".try-bands li").TextContent);
    }

    [Fact]
    public async Task Sentences_stand_apart_and_letters_of_the_picture_are_explained_below_it()
    {
        await using var page = new BunitContext();
        var bill = AQuote.View().Bill;
        var paid = new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.Paid, null, "", Amount: 1m, Part: 1, Day: ARun.Day);
        foreach (var view in new[] { AQuote.View(), AQuote.View(events: [paid]) })
        {
            Assert.Matches(@"each\.\s+Your part is", Render(page, StateOf("Out", view)).Find("p.sentence").TextContent);
        }

        var shown = Render(page, StateOf("Out", AQuote.View()));
        var letters = shown.FindAll(".staircase svg text.key").Select(key => key.TextContent).Distinct().ToList();
        Assert.NotEmpty(letters);
        Assert.Equal(letters, shown.FindAll(".try-bands .key").Select(key => key.TextContent));
    }

    // Whoever comes back by a link finds what was answered by it, whatever became of the quote since.
    [Theory]
    [InlineData(QuoteState.Out, "Ada", "You agreed to it on 2 March 2026. Others have not answered yet.")]
    [InlineData(QuoteState.Agreed, "ada", "You agreed to it on 2 March 2026. Everyone who was asked has agreed.")]
    [InlineData(QuoteState.Agreed, "Bo", "Bo agreed to it by this link on 2 March 2026. Everyone who was asked has agreed.")]
    [InlineData(QuoteState.TurnedDown, "Ada", "You agreed to it on 2 March 2026. Someone else who was asked has turned it down.")]
    [InlineData(QuoteState.Replaced, "Ada", "You agreed to it on 2 March 2026. A later quote stands in its place, which your yes does not count for; ask Eel Pie Editions for its link.")]
    public void Whoever_comes_back_reads_first_what_they_answered(QuoteState state, string by, string told)
    {
        var agreed = new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.Agreed, AQuote.Link.Id, by, "", 100, 305.83m, 1);
        var view = AQuote.View(events: [agreed]);
        view = AQuote.Again(view, view.Whole with { State = state, ReplacedBy = state == QuoteState.Replaced ? 15 : null });

        Assert.Equal(told, string.Join(' ', ShareStanding.Sentences(view, AQuote.Link with { Answer = QuoteAnswer.Agreed })));
    }

    [Fact]
    public void A_quote_in_the_place_of_another_says_that_it_asks_anew()
    {
        var view = AQuote.View();
        view = AQuote.Again(view, view.Whole with { Quote = view.Quote with { Replaces = 9 } });

        Assert.Equal(["It takes the place of quote 9; what was answered to that one does not count for this one."], ShareStanding.Sentences(view, AQuote.Link));
        Assert.Empty(ShareStanding.Sentences(AQuote.View(), AQuote.Link));
    }

    // A link that ends before the quote's last day lets nobody agree after it.
    [Theory]
    [InlineData(10, true, "can be agreed to until 11 March 2026")]
    [InlineData(400, true, "can be agreed to until {0}")]
    [InlineData(10, false, "opens until 11 March 2026")]
    public void The_last_day_is_the_readers_own(int days, bool isAsked, string told)
    {
        var view = AQuote.View();
        var link = AQuote.Link with { EndsAt = TimeZoneInfo.Local.EndOf(new DateOnly(2026, 3, 1).AddDays(days)), Rights = AQuote.Link.Rights with { Agree = isAsked } };

        Assert.Equal(string.Format(CultureInfo.InvariantCulture, told, view.Format.Day(view.Facts.Until)), ShareStanding.Head(view, link));
    }

    [Theory]
    [InlineData(QuoteState.Out, true)]
    [InlineData(QuoteState.Held, true)]
    [InlineData(QuoteState.Agreed, false)]
    [InlineData(QuoteState.TurnedDown, false)]
    [InlineData(QuoteState.Replaced, false)]
    [InlineData(QuoteState.Lapsed, false)]
    public async Task Another_quantity_is_asked_for_of_a_quote_that_may_still_be_made_anew(QuoteState state, bool offered)
    {
        await using var page = new BunitContext();
        var tried = StateOf("tried", AQuote.View());
        var shown = Render(page, tried with { View = AQuote.Again(tried.View, tried.View.Whole with { State = state, ReplacedBy = state == QuoteState.Replaced ? 15 : null }) });

        Assert.Equal(offered, shown.FindAll("#another-sheet form[action$='/ask']").Count == 1);
    }

    [Theory]
    [InlineData(ShareForm.Agree, Hostile, Hostile, "#agree input[name=name]")]
    [InlineData(ShareForm.TurnDown, "", "", "#no-name")]
    [InlineData(ShareForm.Remark, " ", "So.", "#remark-name")]
    [InlineData(ShareForm.Remark, "Ada", " ", "#remark-words")]
    public async Task A_refused_form_opens_the_page_at_its_field(ShareForm about, string name, string words, string field)
    {
        await using var page = new BunitContext();
        var shown = Render(page, StateOf($"refused {about}", AQuote.View()) with { Typed = new ShareTyped(name, words, "") });

        Assert.Equal([shown.Find(field)], shown.FindAll("[autofocus]"));
    }

    [Fact]
    public async Task A_part_of_the_page_that_only_asks_is_not_printed()
    {
        await using var page = new BunitContext();
        var unsaid = Render(page, StateOf("Out", AQuote.View()));
        var said = Render(page, StateOf("Out", AQuote.View(events: [Remark("So.")])));

        Assert.Contains("no-print", unsaid.Find("#remarks-sheet").ClassList);
        Assert.DoesNotContain("no-print", said.Find("#remarks-sheet").ClassList);
    }

    [Fact]
    public async Task Words_that_run_the_other_way_turn_nothing_around_beside_them()
    {
        await using var page = new BunitContext();
        var shown = Render(page, StateOf("Out", AQuote.View(Turned, events: [Remark(Turned) with { By = Turned }])));

        Assert.Equal("BDI", shown.Find("h1").FirstElementChild!.TagName);
        Assert.Equal("auto", shown.Find(".course .said-words").GetAttribute("dir"));
        // A name within a sentence stands between an isolate and its end (UAX #9, FSI and PDI).
        Assert.Contains($"\u2068{Turned}", shown.Find(".course").TextContent, StringComparison.Ordinal);
        Assert.Contains('\u2069', shown.Find(".course").TextContent);
    }

    // Unicode CLDR: German groups by a point and sets a comma before the cents, American English the other way about.
    [Theory]
    [InlineData("de-DE", ',')]
    [InlineData("en-US", '.')]
    public async Task Money_is_written_as_the_reader_writes_it(string culture, char mark)
    {
        await using var page = new BunitContext();
        var view = AQuote.View(culture: culture);
        var shown = Render(page, StateOf("Out", view));

        var cents = view.Quote.Landed.ToString("F2", CultureInfo.InvariantCulture)[^2..];
        Assert.Contains($"{mark}{cents}", shown.Find("p.sentence").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain($"{(mark == ',' ? '.' : ',')}{cents}", shown.Find("p.sentence").TextContent, StringComparison.Ordinal);
    }

    // ISO 4217: the yen has no minor unit.
    [Fact]
    public async Task Yen_have_no_part_and_names_that_run_from_the_right_stand_apart()
    {
        await using var page = new BunitContext();
        const string name = "שלום בן ים";
        var view = AQuote.View(name, "ja-JP", events: [Remark(name) with { By = name }], job: job => job with { Currency = Currency.Find("JPY")! });
        var shown = Render(page, StateOf("Out", view));

        Assert.Contains($"for ￥{view.Quote.Landed.ToString("#,0", CultureInfo.InvariantCulture)},", string.Join(' ', shown.Find("p.sentence").TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.All(shown.FindAll("#cost + table td.num, section[aria-labelledby=cost] tfoot td.num"), sum => Assert.DoesNotContain('.', sum.TextContent));
        Assert.Equal(name, shown.Find("h1 bdi").TextContent);
        Assert.Contains($"\u2068{name}\u2069", shown.Find(".course").TextContent, StringComparison.Ordinal);
    }

    private static IRenderedComponent<SharePage> Render(BunitContext page, ShareState state) => page.Render<SharePage>(with => with.Add(share => share.State, state));

    private static QuoteEvent Remark(string words) => new(1, AQuote.MadeAt, QuoteEventKind.Remarked, AQuote.Link.Id, words, words);

    private static ShareState StateOf(string name, QuoteView view)
    {
        var plain = new ShareState(view, AQuote.Link with { Name = Hostile }, Secret, "/");
        if (Enum.TryParse<QuoteState>(name, out var state))
        {
            var stands = AQuote.Again(view, view.Whole with { State = state, ReplacedBy = state == QuoteState.Replaced ? 15 : null });
            return plain with { View = stands };
        }

        var tried = SharedQuotes.Try(view, plain.Link, 60).Estimate!;
        return name switch
        {
            "tried" => plain with { Tried = tried },
            "said" => plain with { Done = "Your remark stands below." },
            _ => plain with
            {
                About = Enum.Parse<ShareForm>(name["refused ".Length..]),
                Problem = "Not so.",
                Typed = new ShareTyped(Hostile, Hostile, Hostile),
                Tried = name == "refused Ask" ? tried : null,
            },
        };
    }
}
