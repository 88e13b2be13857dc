using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace PressRun.Browser.Tests.Running;

/// <summary>The app as a host runs it: a process of its own, with its own PostgreSQL in a folder of its own. Killed and started again it
/// answers at the same address from the same data.</summary>
public sealed partial class AppProcess : IAsyncDisposable
{
    private const string Announcement = "PressRun is at ";
    private const int FirstPort = 20_000;
    private const int LastPort = 32_000;
    private const int MostTries = 50;
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(30);

    private readonly bool sample;
    private readonly bool signIn;
    private readonly ConcurrentQueue<string> said = new();
    private Process process = null!;

    private readonly Dictionary<string, string> settings;

    private AppProcess(bool sample, bool signIn, Dictionary<string, string> settings) => (this.sample, this.signIn, this.settings) = (sample, signIn, settings);

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = new($"http://127.0.0.1:{FreePort()}");

    // A socket's path must be short, so the folder lies where paths are.
    internal string Folder { get; } = ShortFolder.New("browser");

    /// <summary>How to reach its database, to see what a page has stored.</summary>
    public string ConnectionString =>
        $"Host={Path.Combine(Folder, "socket")};Username=pressrun;Password={File.ReadAllText(Path.Combine(Folder, "database-password")).Trim()};Database=pressrun;Pooling=false";

    /// <summary>Its number on this machine.</summary>
    public int ProcessId => process.Id;

    /// <summary>What it has used of the processors so far.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>What it has written so far, its errors too.</summary>
    public string Said => string.Join(Environment.NewLine, said);

    /// <summary>Starts it and waits until it is ready.</summary>
    /// <param name="sample">True for the sample press, false for an empty database.</param>
    /// <param name="signIn">True for people who sign in, false for single-user mode.</param>
    /// <param name="settings">More of its environment.</param>
    public static async Task<AppProcess> StartAsync(bool sample, bool signIn = false, Dictionary<string, string>? settings = null)
    {
        var app = new AppProcess(sample, signIn, settings ?? []);
        try
        {
            await MadeFolders.CopyToAsync(app.Folder, sample, signIn);
            await app.StartAsync();
            return app;
        }
        catch
        {
            await app.DisposeAsync();
            throw;
        }
    }

    /// <summary>Makes a data folder by a first start, and answers where it lies.</summary>
    internal static async Task<string> MakeFolderAsync(bool sample, bool signIn)
    {
        var app = new AppProcess(sample, signIn, []);
        await app.StartAsync();
        await app.StopAsync();
        return app.Folder;
    }

    /// <summary>Starts it again after <see cref="KillAsync"/>.</summary>
    public async Task StartAsync()
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "app", "PressRun.Web.dll")])
        {
            WorkingDirectory = Path.Combine(AppContext.BaseDirectory, "app"),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["ASPNETCORE_URLS"] = Address.GetLeftPart(UriPartial.Authority);
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        start.Environment["PressRun__DataFolder"] = Folder;
        start.Environment["PressRun__SignIn"] = signIn ? "on" : "off";
        // Tests tell by what a proxy on this machine would forward from where somebody comes.
        start.Environment["PressRun__TrustedProxies"] = "127.0.0.1";
        start.Environment["PressRun__Sample"] = sample ? "true" : "false";
        // The log is let say as much as it may, so that tests see what it never says.
        start.Environment["Logging__LogLevel__microsoft.aspnetcore.hosting.diagnostics"] = "Debug";
        start.Environment["Logging__Console__FormatterName"] = "simple";
        start.Environment["Logging__Console__FormatterOptions__IncludeScopes"] = "true";
        start.Environment.Remove("ConnectionStrings__PressRun");
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        process = Process.Start(start)!;
        var address = new TaskCompletionSource<Uri>(TaskCreationOptions.RunContinuationsAsynchronously);
        process.OutputDataReceived += (_, line) => Hear(line.Data, address);
        process.ErrorDataReceived += (_, line) => Hear(line.Data, address);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var ended = process.WaitForExitAsync(CancellationToken.None);
        if (await Task.WhenAny(address.Task, ended).WaitAsync(LongestStart) == ended)
        {
            throw new InvalidOperationException($"The app ended with {process.ExitCode}:{Environment.NewLine}{Said}");
        }

        Address = await address.Task;
        // Over TLS it has a certificate of its own making.
        using var trusting = new HttpClientHandler { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator };
        using var http = new HttpClient(trusting) { BaseAddress = Address };
        await Eventually.HoldsAsync(async () => await IsReadyAsync(http), "the app is ready");
    }

    /// <summary>The code that it wrote for the first owner.</summary>
    public Task<string> OwnerCodeAsync() => CodeAsync(OwnerCode());

    /// <summary>The code that it wrote for a new password.</summary>
    public Task<string> PasswordCodeAsync() => CodeAsync(PasswordCode());

    /// <summary>Ends it at once, as a power cut would.</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync(CancellationToken.None);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }

    private async Task StopAsync()
    {
        if (process is { HasExited: false })
        {
            using var ask = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
            using var patience = new CancellationTokenSource(LongestStop);
            try
            {
                await process.WaitForExitAsync(patience.Token);
            }
            catch (OperationCanceledException)
            {
                await KillAsync();
            }
        }

        process?.Dispose();
    }

    // Below the ports that the system lends for connections (32768 and up on Linux): while a killed app is down, nobody is lent its own.
    private static int FreePort()
    {
        for (var tried = 0; ; tried++)
        {
            using var probe = new TcpListener(IPAddress.Loopback, Random.Shared.Next(FirstPort, LastPort + 1));
            try
            {
                probe.Start();
                return ((IPEndPoint)probe.LocalEndpoint).Port;
            }
            catch (SocketException) when (tried < MostTries)
            {
                // Somebody listens there: another.
            }
        }
    }

    private static async Task<bool> IsReadyAsync(HttpClient http)
    {
        using var answer = await http.GetAsync(new Uri("readyz", UriKind.Relative));
        return answer.StatusCode == HttpStatusCode.OK;
    }

    private async Task<string> CodeAsync(Regex said)
    {
        await Eventually.HoldsAsync(() => Task.FromResult(said.IsMatch(Said)), "the code is in the log");
        return said.Match(Said).Groups[1].Value;
    }

    private void Hear(string? line, TaskCompletionSource<Uri> address)
    {
        if (line is null)
        {
            return;
        }

        said.Enqueue(line);
        if (line.StartsWith(Announcement, StringComparison.Ordinal))
        {
            address.TrySetResult(new Uri(line[Announcement.Length..]));
        }
    }

    [GeneratedRegex("once and for 24 hours: ([0-9A-Z-]+)")]
    private static partial Regex PasswordCode();

    [GeneratedRegex("until the next start: ([0-9A-Z-]+)")]
    private static partial Regex OwnerCode();
}
