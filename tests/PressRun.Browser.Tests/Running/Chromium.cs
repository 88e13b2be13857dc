using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;

[assembly: AssemblyFixture(typeof(Chromium))]
[assembly: AssemblyFixture(typeof(SampleApp))]

namespace PressRun.Browser.Tests.Running;

/// <summary>The machine's own Chromium, without a window, asking nobody for anything by itself.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run",
        // The lists below its own address line are two more pages in each window, made anew for each test: they took half of what opening one takes. Only the
        // last list of features counts, so what the library turns off for tests is said again.
        "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup,AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,DialMediaRouteProvider,GlobalMediaControls,HttpsUpgrades,"
        + "LensOverlay,MediaRouter,PaintHolding,ThirdPartyStoragePartitioning,BlockOriginHeaderModificationOnRedirect,AvoidCorsURLLoaderRestartOnRedirect,Translate,AutoDeElevate,OptimizationHints",
    ];

    private IPlaywright playwright = null!;

    /// <summary>The browser.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Path(), Headless = true, Args = Arguments });
        Assertions.SetDefaultExpectTimeout(Visit.Patience);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Browser.CloseAsync();
        playwright.Dispose();
    }

    private static string Path() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator)
        .Select(folder => System.IO.Path.Combine(folder, "chromium"))
        .FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("No chromium on the path; tests/run.sh installs it.");
}
