using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Web.Shelf;

namespace PressRun.Benchmarks;

/// <summary>The sample press on a private PostgreSQL of its own, for as long as something is measured.</summary>
internal static class PrivatePress
{
    /// <summary>Starts it, measures, and takes it away.</summary>
    public static async Task<int> MeasureAsync(Func<IServiceProvider, PressRecord, Task> measure)
    {
        var folder = Path.Combine(Path.GetTempPath(), "pressrun-measured-" + Guid.NewGuid().ToString("N")[..8]);
        var builder = Host.CreateEmptyApplicationBuilder(null);
        builder.Configuration.AddInMemoryCollection([new("PressRun:DataFolder", folder), new("PressRun:Sample", "true")]);
        builder.Services.AddPressRunData(builder.Configuration);
        builder.Services.AddShelf();
        using var host = builder.Build();
        await host.StartAsync();
        using var program = Visiting.As(new Visitor.Program());
        try
        {
            await measure(host.Services, (await host.Services.GetRequiredService<PressStore>().ListAsync()).Single());
        }
        finally
        {
            await host.StopAsync();
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }
}
