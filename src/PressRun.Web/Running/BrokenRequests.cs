using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using PressRun.Data.Running;
using PressRun.Web.Api;
using PressRun.Web.Layout;
using PressRun.Web.Quotes;

namespace PressRun.Web.Running;

/// <summary>Answers a request that is broken itself with a 4xx status, since nothing is wrong with the server.</summary>
public static class BrokenRequests
{
    private const int MostPort = 65_535;
    private static readonly PathString Programs = "/api/v1";
    private static readonly PathString[] WithOwnLimit = ["/_blazor", Programs, "/fair/entries", "/tally", SharePages.Folder];

    /// <summary>Refuses requests without a host, as HTTP/1.0 allows them, or with a port that is none: no address of a page could be told from
    /// them; only whether the server lives may be asked so. What is found broken while a body is read gets the status that the web server has for it.</summary>
    /// <param name="app">The app.</param>
    /// <param name="pathBase">The path that it is served under.</param>
    public static void UseBrokenRequestAnswers(this IApplicationBuilder app, PathString pathBase) => app.Use(async (context, next) =>
    {
        var isNamed = context.Request.Host.HasValue || Health.IsAsked(context.Request.Path, pathBase);
        if (!isNamed || context.Request.Host.Port is < 0 or > MostPort)
        {
            await AnswerAsync(context, pathBase, StatusCodes.Status400BadRequest);
            return;
        }

        try
        {
            await next(context);
        }
        catch (Exception problem) when (!context.Response.HasStarted && StatusOf(problem, context.Request) is { } status)
        {
            context.Response.Clear();
            CloseLine(context, problem);
            await AnswerAsync(context, pathBase, status);
        }
    });

    // A program reads why by the members of problem details; a browser that sends such a thing has nobody who reads.
    private static Task AnswerAsync(HttpContext context, PathString pathBase, int status)
    {
        context.Response.StatusCode = status;
        return context.Request.Path.StartsWithSegments(pathBase.Add(Programs)) && !context.RequestAborted.IsCancellationRequested ? ApiProblem.Broken(context, status) : Task.CompletedTask;
    }

    /// <summary>Closes the line of a request that broke off while it was read. Else the web server reads on where nothing comes any more, and its surprise stands in the log at
    /// whatever length: anybody could fill it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="problem">What came of reading it.</param>
    public static void CloseLine(HttpContext context, Exception? problem)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (problem is BadHttpRequestException or ConnectionResetException)
        {
            context.Features.Get<IConnectionLifetimeNotificationFeature>()?.RequestClose();
            if (problem is ConnectionResetException)
            {
                // Nobody is there to be answered, and no rest to be read over.
                context.Abort();
            }
        }
        else if (problem is not null)
        {
            CloseLine(context, problem.InnerException);
        }
    }

    /// <summary>Leaves what is sent without a page in answer: the page that says that nothing is here takes no forms.</summary>
    public static void UsePlainAnswersToForms(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method) && context.Features.Get<IStatusCodePagesFeature>() is { } pages)
        {
            pages.Enabled = false;
        }

        return next(context);
    });

    /// <summary>Most bytes of a form of the app's pages; the longest has a remark in it.</summary>
    public const int MostOfForm = 64 * 1024;

    /// <summary>Takes no larger forms than the pages have. A form is read whole before anybody is asked who they are, so without this strangers would fill the memory. Hub,
    /// HTTP interface, kept pages and pages of links have limits of their own.</summary>
    public static void UseSmallForms(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (WithOwnLimit.Any(folder => context.Request.Path.StartsWithSegments(folder)))
        {
            return next(context);
        }

        if (context.Request.ContentLength > MostOfForm)
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
            return Task.CompletedTask;
        }

        // Of a form that does not say how long it is, no more is read.
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } body)
        {
            body.MaxRequestBodySize = MostOfForm;
        }

        return next(context);
    });

    /// <summary>Refuses a form without the token of its page, with a sentence, before anything reads it.</summary>
    public static void UseTokensOrNothing(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (context.Features.Get<IAntiforgeryValidationFeature>() is not { IsValid: false } token)
        {
            return next(context);
        }

        // It was read before its token could be looked for.
        CloseLine(context, token.Error);
        return PlainPage.SendAsync(context, StatusCodes.Status400BadRequest, PlainPage.Of(
            context, Say($"This form is too old"), Say($"It came without the token that its page gives it; nothing was changed. Fetch the page again, and send it from there."), masthead: true));
    });

    // The web server tells of a chunk whose size overflows as of any failed transfer, with the overflow inside.
    private static int? StatusOf(Exception problem, HttpRequest request) => problem switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        IOException { InnerException: OverflowException } => StatusCodes.Status400BadRequest,

        // A form that breaks off, has parts without end or names an alphabet that is none.
        InvalidDataException or NotSupportedException or IOException when IsForm(request) => StatusCodes.Status400BadRequest,
        _ => null,
    };

    // Asked of the text itself: what the header means may be what cannot be read.
    private static bool IsForm(HttpRequest request) =>
        request.ContentType is { } type
        && (type.StartsWith("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase) || type.StartsWith("multipart/form-data", StringComparison.OrdinalIgnoreCase));
}
