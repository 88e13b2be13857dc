using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.SignalR.Client;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Programs.Load;

/// <summary>How long an edit took.</summary>
/// <param name="Shown">Until what draws the new figure had come, in milliseconds.</param>
/// <param name="Stored">Until the page was told to forget its draft, as the figure is stored, in milliseconds.</param>
internal readonly record struct Waited(double Shown, double Stored);

/// <summary>
/// The page of a run without a browser: fetched, then on the line to its server as the framework's script would be. It draws nothing, says at once that it has drawn,
/// and answers for the page's scripts.
/// </summary>
internal sealed class PageClient : IAsyncDisposable
{
    // As in drafts.js: who pauses for so long in the typing has the server keep it.
    private static readonly TimeSpan PauseOfTyping = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Uri app;
    private readonly HubConnection line;
    private readonly PageScripts scripts = new();
    private readonly TaskCompletionSource live = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Dictionary<string, long> listeners = [];
    private int field = -1;
    private string draft = "";
    private long calls;
    private string circuit = "";
    private string? wanted;
    private string? standing;
    private TaskCompletionSource<long> shown = Arrival();
    private TaskCompletionSource<long> stored = Arrival();

    private PageClient(Uri app, CookieContainer cookies)
    {
        this.app = app;
        line = BlazorPack.LineTo(app, cookies);
        line.On<long, byte[]>("JS.RenderBatch", DrawAsync);
        line.On<long, string, string, int, long, int>("JS.BeginInvokeJS", AnswerAsync);
        line.On<string>("JS.Error", words => Fail(new InvalidOperationException(words)));
        line.Closed += fault =>
        {
            Fail(fault ?? new InvalidOperationException("The server closed the line."));
            return Task.CompletedTask;
        };
    }

    /// <summary>Opens the page of a run.</summary>
    /// <param name="app">Where the app answers.</param>
    /// <param name="press">The press that the browser is about.</param>
    /// <param name="path">The page.</param>
    public static async Task<PageClient> OpenAsync(Uri app, string press, string path)
    {
        var (cookies, page) = (new CookieContainer(), new Uri(app, path));
        cookies.Add(app, new Cookie("press", press));
        var served = await ServedPage.FetchAsync(cookies, page);
        var client = new PageClient(app, cookies);
        await client.line.StartAsync();
        client.circuit = await client.line.InvokeAsync<string>("StartCircuit", app.ToString(), page.ToString(), "[]", served.State);
        await client.line.SendAsync("UpdateRootComponents", served.Additions, served.State);
        await client.live.Task.WaitAsync(Patience);
        return client;
    }

    /// <summary>Types another quantity and leaves the field; answers when it is drawn and stored.</summary>
    /// <param name="quantity">Copies, other than those that stand there.</param>
    /// <returns>Null where they stand there already.</returns>
    public async Task<Waited?> EditAsync(int quantity)
    {
        var text = quantity.ToString(CultureInfo.InvariantCulture);
        if (text == standing)
        {
            return null;
        }

        (shown, stored) = (Arrival(), Arrival());
        (wanted, standing) = (text, text);
        var began = Stopwatch.GetTimestamp();
        foreach (var (happened, listener) in Listeners("input", "change"))
        {
            await DispatchAsync(happened, listener, text);
        }

        await PauseAsync(text);
        return new Waited(Since(began, await shown.Task.WaitAsync(Patience)), Since(began, await stored.Task.WaitAsync(Patience)));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        // Said as a browser that leaves says it, so that the server keeps nothing for its return.
        using var http = new HttpClient();
        using var leaving = new MultipartFormDataContent { { new StringContent(circuit), "circuitId" } };
        using var answer = await http.PostAsync(new Uri(app, "_blazor/disconnect"), leaving);
        answer.EnsureSuccessStatusCode();
        await line.DisposeAsync();
    }

    private async Task DrawAsync(long number, byte[] bytes)
    {
        var arrived = Stopwatch.GetTimestamp();
        var batch = new RenderBatch(bytes);
        lock (listeners)
        {
            if (field < 0 && batch.Find("input", IsQuantity) is var (component, attributes, first))
            {
                (field, draft, standing) = (component, attributes["data-draft"]!, attributes["value"]);
                Listen(first);
            }

            Listen(batch.Relistened(field).Select(anew => KeyValuePair.Create(anew.Attribute, anew.Listener)));
        }

        await line.SendAsync("OnRenderCompleted", number, null);
        if (wanted is { } figure && batch.Says("aria-valuenow", figure))
        {
            shown.TrySetResult(arrived);
        }
    }

    private static bool IsQuantity(IReadOnlyDictionary<string, string?> attributes) =>
        attributes.GetValueOrDefault("data-draft") is { } key && key.StartsWith("plan/", StringComparison.Ordinal) && key.EndsWith("/quantity", StringComparison.Ordinal);

    private void Listen(IEnumerable<KeyValuePair<string, long>> anew)
    {
        foreach (var (attribute, listener) in anew)
        {
            listeners[attribute] = listener;
        }
    }

    private async Task AnswerAsync(long call, string function, string arguments, int kind, long target, int way)
    {
        var arrived = Stopwatch.GetTimestamp();
        var answer = scripts.Answer(function, arguments, kind);
        if (call != 0)
        {
            await line.SendAsync("EndInvokeJSFromDotNet", call, true, string.Create(CultureInfo.InvariantCulture, $"[{call},true,{answer}]"));
        }

        if (function == "forget")
        {
            stored.TrySetResult(arrived);
        }

        if (scripts.Live && field >= 0)
        {
            live.TrySetResult();
        }
    }

    // Both at once: the first may be answered, and the listeners be new, before the second is sent.
    private (string Happened, long Listener)[] Listeners(params string[] events)
    {
        lock (listeners)
        {
            return [.. events.Select(happened => (happened, listeners["on" + happened]))];
        }
    }

    private Task DispatchAsync(string happened, long listener, string value) => InvokeAsync(
        "DispatchEventAsync", scripts.Renderer, new { eventHandlerId = listener, eventName = happened, eventFieldInfo = new { componentId = field, fieldValue = value } }, new { value });

    private async Task PauseAsync(string text)
    {
        if (await Task.WhenAny(stored.Task, Task.Delay(PauseOfTyping)) != stored.Task)
        {
            await InvokeAsync("Paused", scripts.Drafts, draft, text);
        }
    }

    private Task InvokeAsync(string method, long target, params object[] arguments) =>
        line.SendAsync("BeginInvokeDotNetFromJS", Interlocked.Increment(ref calls).ToString(CultureInfo.InvariantCulture), null, method, target, JsonSerializer.Serialize(arguments));

    private void Fail(Exception fault)
    {
        live.TrySetException(fault);
        shown.TrySetException(fault);
        stored.TrySetException(fault);
    }

    private static double Since(long began, long arrived) => Stopwatch.GetElapsedTime(began, arrived).TotalMilliseconds;

    private static TaskCompletionSource<long> Arrival() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
