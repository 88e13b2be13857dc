using System.Globalization;
using System.Net;
using PressRun.Data.Quotes;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What the forms of a shared quote send, and what its page then shows.</summary>
internal static class ShareForms
{
    /// <summary>What the address says where a quantity had been asked for before.</summary>
    public const string AskedBefore = "asked";

    /// <summary>Which form it is, and what was said by it; no reply where there is no such form.</summary>
    public static (ShareForm About, Reply? Reply) ReplyOf(string form, IFormCollection typed)
    {
        var name = Line(typed["name"]);
        var words = typed["words"].ToString().ReplaceLineEndings("\n").Trim();
        var copies = Typed.Count(Line(typed["copies"]), CultureInfo.InvariantCulture);
        return form switch
        {
            "agree" => (ShareForm.Agree, new Reply.Agree(name, copies ?? 0, Fingerprint(typed["fingerprint"].ToString()))),
            "turn-down" => (ShareForm.TurnDown, new Reply.TurnDown(name, words)),
            "remark" => (ShareForm.Remark, new Reply.Remark(name, words)),
            "ask" => (ShareForm.Ask, new Reply.AskFor(name, copies ?? 0, 0m)),
            _ => (ShareForm.None, null),
        };
    }

    private static string Line(string? text) => (text ?? "").Trim();

    private static byte[] Fingerprint(string hex)
    {
        try
        {
            return Convert.FromHexString(hex);
        }
        catch (FormatException)
        {
            return [];
        }
    }

    /// <summary>The page with another quantity worked out on it, or with what is wrong with it.</summary>
    public static ShareState Tried(ShareState state, string typed)
    {
        var (estimate, problem) = SharedQuotes.Try(state.View, state.Link, Typed.Count(typed.Length > 20 ? "" : typed, CultureInfo.CurrentCulture));
        return state with { Tried = estimate, Problem = problem, About = problem is null ? ShareForm.None : ShareForm.Try, Typed = ShareTyped.Nothing with { Copies = typed } };
    }

    /// <summary>The page around a form that was refused, with what was typed in it.</summary>
    public static ShareState Refused(ShareState state, ShareForm about, string problem, IFormCollection typed) => state with
    {
        About = about,
        Problem = problem,
        Typed = new ShareTyped(typed["name"].ToString(), typed["words"].ToString(), typed["copies"].ToString()),
        Tried = about == ShareForm.Ask ? SharedQuotes.Try(state.View, state.Link, Typed.Count(Line(typed["copies"]), CultureInfo.InvariantCulture)).Estimate : null,
    };

    /// <summary>What a form does, by the word in the address that follows it; null for any other word.</summary>
    public static QuoteEventKind? KindOf(string said) => said switch
    {
        "agree" => QuoteEventKind.Agreed,
        "turn-down" => QuoteEventKind.TurnedDown,
        "ask" or AskedBefore => QuoteEventKind.AskedFor,
        "remark" => QuoteEventKind.Remarked,
        _ => null,
    };

    /// <summary>That a form has done it.</summary>
    /// <param name="said">The word in the address.</param>
    /// <param name="press">The press's name, held apart from what stands around it.</param>
    public static string Done(string said, string press) => said switch
    {
        "agree" => Say($"You have agreed. {press} has been told."),
        "turn-down" => Say($"You have turned it down. {press} has been told."),
        "ask" => Say($"{press} has been told which quantity you would like, and sends you a new quote if that is well."),
        AskedBefore => Say($"This quantity has been asked for by this link already. {press} knows of it, and sends you a new quote if that is well."),
        _ => Say($"Your remark stands below."),
    };

    /// <summary>What somebody wrote while their link ended, or too often: it went nowhere, and is theirs to take along.</summary>
    public static string Kept(IFormCollection? typed)
    {
        if (typed is null)
        {
            return "";
        }

        var (name, words) = (Line(typed["name"]), typed["words"].ToString().Trim());
        var box = words.Length == 0 ? "" : $"""<div class="field"><label for="kept">{Say($"What you wrote")}</label><textarea id="kept" dir="auto" readonly>{WebUtility.HtmlEncode(words)}</textarea></div>""";
        var sender = $"<bdi>{WebUtility.HtmlEncode(name)}</bdi>";
        var nothing = name.Length == 0
            ? Say($"Nothing of what you sent was counted or written down.")
            : Say($"Nothing of what you sent as {sender} was counted or written down.");
        return $"""<p>{nothing}</p>{box}""";
    }
}
