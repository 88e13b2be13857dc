using System.Globalization;
using PressRun.Data.Running;
using PressRun.Web.Api;
using PressRun.Web.Layout;

namespace PressRun.Web.Running;

/// <summary>Answers calmly while the database is away: with status 503 and a page that needs none, or a problem document. That it is away has been told to the
/// log once; here it is told no more.</summary>
public static class AwayAnswers
{
    private const int SecondsToComeBack = 10;

    /// <summary>Puts the answer in the place of whatever failed for want of the database.</summary>
    public static void UseAwayAnswers(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        try
        {
            await next(context);
        }
        catch (Exception problem) when (!context.Response.HasStarted && DatabaseAway.IsWhy(problem))
        {
            context.Response.Clear();
            context.Response.Headers.RetryAfter = SecondsToComeBack.ToString(CultureInfo.InvariantCulture);
            await (context.Request.Path.StartsWithSegments("/api/v1") ? ApiProblem.DatabaseAway(context) : SayAsync(context, DatabaseAway.IsFull(problem)));
        }
    });

    // What was sent is not sent again by itself: it may have been stored in the last moment.
    private static Task SayAsync(HttpContext context, bool isFull)
    {
        var isRead = HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method);
        var more = isRead
            ? $"""<p class="next"><a class="button first" href="{PlainPage.SameAddress(context)}">{Say($"Try again")}</a></p><script type="module" src="js/away.js"></script>"""
            : "";
        var words = isFull
            ? Say($"PressRun is running, and the disk of the database that it keeps everything in is full, so that nothing new can be written down. Nothing that was saved is lost. Whoever runs this server makes room; until then it can only be tried again.")
            : isRead
            ? Say($"PressRun is running, and the database that it keeps everything in does not answer just now. Nothing is lost. This page comes by itself as soon as it can.")
            : Say($"PressRun is running, and the database that it keeps everything in does not answer just now. Go back, where what you typed still stands, and send it again in a moment; look first whether it has arrived.");
        return PlainPage.SendAsync(context, StatusCodes.Status503ServiceUnavailable, PlainPage.Of(
            context, Say($"One moment, please"), words, more, masthead: !context.Request.Path.StartsWithSegments(Quotes.SharePages.Folder)));
    }
}
