using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Programs.Pictures;

/// <summary>Takes pictures of an app's pages, of the sample press unless told otherwise.</summary>
internal sealed class Camera : IAsyncDisposable
{
    private const int Height = 860;

    private readonly Chromium chromium;

    private Camera(AppProcess app, Chromium chromium) => (App, this.chromium) = (app, chromium);

    /// <summary>The app that it takes pictures of.</summary>
    public AppProcess App { get; }

    /// <summary>Starts an app and a browser.</summary>
    public static async Task<Camera> OpenAsync(bool sample = true)
    {
        var chromium = new Chromium();
        await chromium.InitializeAsync();
        return new Camera(await AppProcess.StartAsync(sample), chromium);
    }

    /// <summary>Takes a picture.</summary>
    /// <param name="path">Of the page.</param>
    /// <param name="file">Where the picture goes, a PNG.</param>
    /// <param name="width">Of the window, in CSS pixels.</param>
    /// <param name="dark">True for the dark theme.</param>
    /// <param name="whole">True for the whole page, false for what a window shows.</param>
    public async Task TakeAsync(string path, string file, int width, bool dark = false, bool whole = false)
    {
        await using var visit = await Visit.BeginAsync(chromium.Browser, App.Address);
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
        await visit.Page.SetViewportSizeAsync(width, Height);
        await visit.Page.GotoAsync(path, new() { WaitUntil = WaitUntilState.NetworkIdle });
        await Assertions.Expect(visit.Page.Locator(".waiting")).ToHaveCountAsync(0);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        await visit.Page.ScreenshotAsync(new() { Path = file, FullPage = whole, Animations = ScreenshotAnimations.Disabled });
        Console.WriteLine(file);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await App.DisposeAsync();
        await chromium.DisposeAsync();
    }
}
