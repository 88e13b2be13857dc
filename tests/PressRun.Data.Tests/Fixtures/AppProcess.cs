using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>The app in a process of its own, as a host runs it.</summary>
internal sealed partial class AppProcess : IAsyncDisposable
{
    private const int Terminate = 15;
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(2);

    private readonly ConcurrentQueue<string> lines = new();
    private readonly TaskCompletionSource ready = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Process process;

    private AppProcess(Process process, Uri address)
    {
        this.process = process;
        Http = new HttpClient { BaseAddress = address };
    }

    public HttpClient Http { get; }

    public string Output => string.Join('\n', lines);

    /// <summary>Starts the app with settings in its environment, and does not wait.</summary>
    public static AppProcess Launch(params (string Name, string Value)[] settings)
    {
        var address = $"http://127.0.0.1:{FreePort()}";
        var configuration = Path.GetFileName(Path.GetDirectoryName(AppContext.BaseDirectory.TrimEnd('/')))!;
        var output = Path.Combine(Repository.Root, "src/PressRun.Web/bin", configuration, "net10.0");
        var start = new ProcessStartInfo("dotnet", [Path.Combine(output, "PressRun.Web.dll")])
        {
            // A supervisor starts it from whatever folder; nothing of it lies there.
            WorkingDirectory = "/",
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["ASPNETCORE_URLS"] = address;
        start.Environment["PressRun__SignIn"] = "off";
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        var app = new AppProcess(Process.Start(start)!, new Uri(address));
        app.process.OutputDataReceived += (_, line) => app.Take(line.Data);
        app.process.ErrorDataReceived += (_, line) => app.Take(line.Data);
        app.process.BeginOutputReadLine();
        app.process.BeginErrorReadLine();
        return app;
    }

    /// <summary>Starts the app and waits until it tells its address.</summary>
    public static async Task<AppProcess> StartAsync(params (string Name, string Value)[] settings)
    {
        var app = Launch(settings);
        var first = await Task.WhenAny(app.ready.Task, app.process.WaitForExitAsync()).WaitAsync(LongestWait);
        Assert.True(first == app.ready.Task, "The app ended: " + app.Output);
        return app;
    }

    /// <summary>Waits until the app has ended by itself.</summary>
    /// <returns>Its exit status.</returns>
    public async Task<int> EndAsync()
    {
        await process.WaitForExitAsync().WaitAsync(LongestWait);
        return process.ExitCode;
    }

    /// <summary>Asks the app to stop, as a supervisor does.</summary>
    public Task<int> StopAsync()
    {
        _ = Signal(process.Id, Terminate);
        return EndAsync();
    }

    /// <summary>Kills the app without a warning.</summary>
    public Task<int> KillAsync()
    {
        process.Kill();
        return EndAsync();
    }

    /// <summary>What an address of the app answers: status and text.</summary>
    /// <param name="path">The address.</param>
    /// <param name="host">The name that the app is called by; null for its own.</param>
    public async Task<(int Status, string Text)> GetAsync(string path, string? host = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Host = host;
        using var response = await Http.SendAsync(request);
        return ((int)response.StatusCode, await response.Content.ReadAsStringAsync());
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            await StopAsync();
        }

        process.Dispose();
        Http.Dispose();
    }

    private void Take(string? line)
    {
        if (line is not null)
        {
            lines.Enqueue(line);
            if (line.StartsWith("PressRun is at ", StringComparison.Ordinal))
            {
                ready.TrySetResult();
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Signal(int process, int signal);
}
