using Microsoft.AspNetCore.Http.Features;
using PressRun.Data.Quotes;
using PressRun.Web.Layout;
using PressRun.Web.People;
using PressRun.Web.Pdf;
using PressRun.Web.Running;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>
/// The pages that a link opens, without an account, a circuit or a script. The secret in the address is the only key, so that no request
/// carries anything by itself that another site could misuse; it is kept out of logs (see <see cref="Running.HostSetup"/>), of referrers and of indexes.
/// </summary>
public static class SharePages
{
    /// <summary>The folder of all links.</summary>
    public const string Folder = "/q";

    private const string Why = "A link is sent to people without an account; the secret in its address is the key.";

    private const int MostBytes = 64 * 1024;

    // Nothing but styles, fonts and pictures of this host, and forms that come back to it.
    private const string Policy =
        "default-src 'none'; style-src 'self'; img-src 'self' data:; font-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    private static readonly string[] Read = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>Maps the pages.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapMethods(Folder + "/{secret}", Read, ShowAsync).Public(Why);
        app.MapMethods(Folder + "/{secret}/quote.pdf", Read, PaperAsync).Public(Why);
        app.MapPost(Folder + "/{secret}/{form}", TakeAsync).Public(Why);
        // In whatever way it is asked: an address under a link that takes nothing says so as calmly as one that shows nothing.
        app.Map(Folder + "/{**rest}", NothingAsync).Public(Why);
    }

    /// <summary>Keeps whatever is answered here out of indexes, caches and referrers, errors too: the address is the key.</summary>
    public static void Hide(IHeaderDictionary headers)
    {
        ArgumentNullException.ThrowIfNull(headers);
        headers["Referrer-Policy"] = "no-referrer";
        headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        headers.CacheControl = "private, no-store";
    }

    // An address of a form that is opened, as by fetching its answer anew, is no page; the quote is.
    private static Task NothingAsync(HttpContext http) => PlainAsync(
        http, StatusCodes.Status404NotFound, Say($"There is nothing here"), Say($"The link as it was sent to you opens the quote; this address is another."));

    private static async Task ShowAsync(HttpContext http, SharedQuotes quotes, string secret)
    {
        if (await OpenAsync(http, quotes, secret) is not { } look)
        {
            return;
        }

        var query = http.Request.Query;
        if (query["copies"] is [{ } copies])
        {
            if (!quotes.MayWork(look))
            {
                await OftenAsync(http);
                return;
            }

            await ShowOneAsync(http, quotes, look, secret, state => ShareForms.Tried(state, copies));
        }
        else if (query["said"] is [{ } said] && ShareForms.KindOf(said) is { } kind && quotes.MayWork(look))
        {
            // Only what this link did is said to be done, whatever the address says.
            await ShowOneAsync(http, quotes, look, secret, state => state with
            {
                Done = state.View.Whole.Events.Any(before => before.Kind == kind && before.LinkId == state.Link.Id) ? ShareForms.Done(said, Apart.Of(state.View.Facts.Press)) : null,
            });
        }
        else if (await quotes.PageAsync(look, secret, PlainPage.BasePath(http), http.RequestAborted) is { } page)
        {
            await SendAsync(http, StatusCodes.Status200OK, page);
        }
        else
        {
            await EndedAsync(http);
        }
    }

    private static async Task PaperAsync(HttpContext http, SharedQuotes quotes, string secret)
    {
        if (await OpenAsync(http, quotes, secret) is not { } look)
        {
            return;
        }

        if (!quotes.MayWork(look))
        {
            await OftenAsync(http);
        }
        else if (await quotes.LoadAsync(look, http.RequestAborted) is var (view, link))
        {
            await SendAsync(http, StatusCodes.Status200OK, QuotePdf.Of(view, view.Facts.Shows == QuoteShows.Lines, link), QuoteFiles.Pdf);
        }
        else
        {
            await EndedAsync(http);
        }
    }

    private static async Task TakeAsync(HttpContext http, SharedQuotes quotes, string secret, string form)
    {
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = MostBytes;
        }

        if (await OpenAsync(http, quotes, secret, evenEnded: true) is not { } look || await TypedAsync(http) is not { } typed)
        {
            return;
        }

        if (!look.IsOpen)
        {
            await EndedAsync(http, typed);
            return;
        }

        var (about, reply) = ShareForms.ReplyOf(form, typed);
        if (reply is null)
        {
            await PlainAsync(http, StatusCodes.Status404NotFound, Say($"There is nothing here"), Say($"This address belongs to no form of this quote."));
            return;
        }

        // A form that is refused has the page worked out anew around it, and whoever asks for a quantity has that worked out too.
        if (!quotes.MayWork(look, LinkWork.Sent) || (reply is Reply.AskFor && !quotes.MayWork(look)))
        {
            await OftenAsync(http, typed);
            return;
        }

        switch (await quotes.ReplyAsync(look, reply, typed["as"].ToString().Trim(), http.RequestAborted))
        {
            case { Words: null } taken:
                http.Response.StatusCode = StatusCodes.Status303SeeOther;
                http.Response.Headers.Location = $"{PlainPage.BasePath(http)}{Folder[1..]}/{secret}?said={(taken.Outcome == ShareOutcome.SaidBefore ? ShareForms.AskedBefore : form)}#said";
                break;
            // What stands in the way may have happened since the quote was read.
            case { Words: { } problem } kept when await quotes.LoadAsync(look, http.RequestAborted) is var (now, mine):
                await SendAsync(http, StatusCodes.Status422UnprocessableEntity, await quotes.RenderAsync(ShareForms.Refused(new ShareState(now, mine, secret, PlainPage.BasePath(http)) { IsAsked = kept.Outcome == ShareOutcome.Asked }, about, problem, typed)));
                break;
            default:
                await EndedAsync(http, typed);
                break;
        }
    }

    // What a form sent; null where it is none or breaks off, and that has been answered.
    private static async Task<IFormCollection?> TypedAsync(HttpContext http)
    {
        if (!http.Request.HasFormContentType)
        {
            await PlainAsync(http, StatusCodes.Status415UnsupportedMediaType, Say($"That is no form"), Say($"Send what the forms of this page send."));
            return null;
        }

        try
        {
            return await http.Request.ReadFormAsync(http.RequestAborted);
        }
        catch (Exception broken) when (broken is BadHttpRequestException or InvalidDataException or NotSupportedException or IOException)
        {
            BrokenRequests.CloseLine(http, broken);
            var status = (broken as BadHttpRequestException)?.StatusCode ?? StatusCodes.Status400BadRequest;
            await PlainAsync(http, status, Say($"That did not arrive whole"), Say($"Go back, where what you typed still stands, and send it again; a remark has at most 2,000 characters."));
            return null;
        }
    }

    // Null where nothing is opened; the answer has been sent then.
    private static async Task<SharedLook?> OpenAsync(HttpContext http, SharedQuotes quotes, string secret, bool evenEnded = false)
    {
        var look = await quotes.LookAsync(secret, http.RequestAborted);
        switch (look)
        {
            // Whoever comes from the same place with a link that there is, is not kept waiting for it.
            case null when !quotes.MayMiss(http.Connection.RemoteIpAddress):
                http.Response.Headers.RetryAfter = "60";
                await PlainAsync(http, StatusCodes.Status429TooManyRequests, Say($"Too many tries"), Say($"Wait a minute, then open the link again as it was sent to you."));
                return null;
            case null:
                await PlainAsync(http, StatusCodes.Status404NotFound, Say($"This link opens nothing"), Say($"Look whether all of it was copied. Else ask whoever sent it for a new one."));
                return null;
            case { IsOpen: false } when !evenEnded:
                await EndedAsync(http);
                return null;
            default:
                return look;
        }
    }

    private static async Task ShowOneAsync(HttpContext http, SharedQuotes quotes, SharedLook look, string secret, Func<ShareState, ShareState> change)
    {
        if (await quotes.LoadAsync(look, http.RequestAborted) is not var (view, link))
        {
            await EndedAsync(http);
            return;
        }

        var state = change(new ShareState(view, link, secret, PlainPage.BasePath(http)));
        await SendAsync(http, state.Problem is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity, await quotes.RenderAsync(state));
    }

    private static Task OftenAsync(HttpContext http, IFormCollection? typed = null)
    {
        http.Response.Headers.RetryAfter = "60";
        return PlainAsync(
            http, StatusCodes.Status429TooManyRequests, Say($"One moment"), Say($"This was asked for very often by this link. Wait a minute and try again; the quote itself opens meanwhile."), ShareForms.Kept(typed));
    }

    private static Task EndedAsync(HttpContext http, IFormCollection? typed = null) => PlainAsync(
        http, StatusCodes.Status410Gone, Say($"This link has ended"), Say($"What it opened can't be read by it any more. Ask whoever sent it for a new one."), ShareForms.Kept(typed));

    private static Task PlainAsync(HttpContext http, int status, string heading, string words, string more = "") =>
        SendAsync(http, status, PlainPage.Of(http, heading, words, more));

    private static Task SendAsync(HttpContext http, int status, byte[] page, string type = "text/html; charset=utf-8")
    {
        http.Response.Headers.ContentSecurityPolicy = Policy;
        return PlainPage.SendAsync(http, status, page, type);
    }
}
