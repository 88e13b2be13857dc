using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace PressRun.Browser.Tests.Running;

/// <summary>One person's browser: cookies and stored text of its own, and a list of everything that a page should not have done.</summary>
public sealed class Visit : IAsyncDisposable
{
    /// <summary>Longest wait for a page, in milliseconds: the machine may be busy with other things.</summary>
    public const int Patience = 45_000;

    private readonly IBrowserContext context;
    private readonly Uri address;
    private readonly ConcurrentQueue<string> faults = new();

    private Visit(IBrowserContext context, IPage page, Uri address)
    {
        this.context = context;
        Page = page;
        this.address = address;
        context.Request += (_, request) => Ask(request.Url);
        page.WebSocket += (_, socket) => Ask(socket.Url);
        page.Console += (_, message) => Note(message.Type is "error" or "warning" ? $"console {message.Type} at {page.Url}: {message.Text}" : null);
        page.PageError += (_, error) => Note($"script error at {page.Url}: {error}");
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>Opens a browser on an app.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="address">The app's address.</param>
    /// <param name="locale">Language of the person; numbers follow it.</param>
    /// <param name="press">The press that this browser is about; null for none chosen yet.</param>
    public static async Task<Visit> BeginAsync(IBrowser browser, Uri address, string locale = "en-IE", string? press = null)
    {
        var context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            IgnoreHTTPSErrors = address.Scheme == Uri.UriSchemeHttps,
            Locale = locale,
            ViewportSize = new ViewportSize { Width = 1280, Height = 900 },
            ColorScheme = ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(Patience);
        if (press is not null)
        {
            await context.AddCookiesAsync([new Cookie { Name = "press", Value = press, Url = address.ToString() }]);
        }

        return new Visit(context, await context.NewPageAsync(), address);
    }

    /// <summary>Opens a page and waits until it answers.</summary>
    public async Task<IResponse> OpenAsync(string path)
    {
        var response = await Page.GotoAsync(path);
        await AnswersAsync();
        return response!;
    }

    /// <summary>Fetches the page anew and waits until it answers.</summary>
    public async Task ReloadAsync()
    {
        await Page.ReloadAsync();
        await AnswersAsync();
    }

    /// <summary>Waits until the page answers to clicks and has fetched what it shows.</summary>
    public async Task AnswersAsync()
    {
        await Page.Locator("body[data-interactive]").WaitForAsync();
        await Assertions.Expect(Page.Locator(".waiting")).ToHaveCountAsync(0);
    }

    /// <summary>Chooses a file, once the page listens for one: Blazor's script marks the field then, and what was chosen before is heard by nobody.</summary>
    public async Task ChooseFileAsync(FilePayload file)
    {
        await Page.WaitForFunctionAsync("() => document.querySelector('input[type=file]')?._blazorInputFileNextFileId !== undefined");
        await Page.SetInputFilesAsync("input[type=file]", file);
    }

    /// <summary>The field or choice of a label.</summary>
    public ILocator Field(string label) => Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true });

    /// <summary>Types into a field in place of what stood there, and stays in it.</summary>
    public async Task TypeAsync(string label, string text)
    {
        await Field(label).ClickAsync();
        await Field(label).PressAsync("ControlOrMeta+a");
        await Field(label).PressSequentiallyAsync(text);
    }

    /// <summary>Types into a field and presses Enter, which saves.</summary>
    public async Task EnterAsync(string label, string text)
    {
        await TypeAsync(label, text);
        await Field(label).PressAsync("Enter");
    }

    /// <summary>Fails where a page asked another host for something, or complained in its console.</summary>
    public void WasQuiet() => Assert.True(faults.IsEmpty, string.Join(Environment.NewLine, faults));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await context.DisposeAsync();

    private void Ask(string url)
    {
        var asked = new Uri(url);
        Note(asked.Scheme is "data" or "blob" || asked.Authority == address.Authority ? null : $"{Page.Url} asked {url}");
    }

    private void Note(string? fault)
    {
        if (fault is not null)
        {
            faults.Enqueue(fault);
        }
    }
}
