using PressRun.Web.Start;

namespace PressRun.Web.Shelf;

/// <summary>What the shelf needs of the host beside the stores.</summary>
public static class ShelfSetup
{
    /// <summary>Adds the shelf's services; the pages and the program that times them share it, so that what is timed is what is shown.</summary>
    public static IServiceCollection AddShelf(this IServiceCollection services) => services
        .AddSingleton<ShelfCosts>()
        .AddSingleton<ShelfOutlooks>()
        .AddSingleton<StillNeededService>()
        .AddSingleton<ShelfJudging>()
        .AddSingleton<ShelfService>();
}
