using System.Globalization;
using System.Text.Json;
using Microsoft.Extensions.Options;
using PressRun.Data.Archive;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Charts;
using PressRun.Web.Shared;

namespace PressRun.Web.Start;

/// <summary>What the first figures come to.</summary>
/// <param name="Estimate">The costing; null where something stands in the way.</param>
/// <param name="Shape">For the drawing.</param>
/// <param name="Problems">What stands in the way.</param>
public sealed record FirstAnswer(Estimate? Estimate, BookShape? Shape, IReadOnlyList<Problem> Problems);

/// <summary>Works out a first number, and sets up a press with it.</summary>
public sealed class StartService(
    PressStore presses,
    PressArchiveStore archives,
    IOptions<PressRunOptions> options,
    TimeProvider time)
{
    private readonly Lazy<string?> sampleName = new(() => NameIn(FolderOf(options.Value)));

    private DateOnly Today => time.Today();

    /// <summary>The presses on this server.</summary>
    public Task<IReadOnlyList<PressRecord>> PressesAsync() => presses.ListAsync();

    /// <summary>True where the visitor may make a press.</summary>
    public Task<bool> MayMakeAsync() => presses.MayMakeAsync();

    /// <summary>True where a sample press comes with the program.</summary>
    public bool HasSample => Directory.Exists(SampleFrom) || File.Exists(SampleFrom);

    private string SampleFrom => FolderOf(options.Value);

    private static string FolderOf(PressRunOptions running) => running.SampleFrom.Length > 0 ? running.SampleFrom : Path.Combine(AppContext.BaseDirectory, "seed-data");

    /// <summary>True of the sample press as long as it is called what it came as.</summary>
    public bool IsSample(PressRecord press) => press.Name == sampleName.Value;

    private static string? NameIn(string sample)
    {
        var file = Path.Combine(sample, "press.json");
        try
        {
            using var press = JsonDocument.Parse(File.Exists(file) ? File.ReadAllBytes(file) : "{}"u8.ToArray());
            return press.RootElement.TryGetProperty("press", out var settings) && settings.TryGetProperty("name", out var name) ? name.GetString() : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException)
        {
            // An archive that cannot be read has no name to know it by; bringing it in says what is wrong with it.
            return null;
        }
    }

    /// <summary>A sample press of the visitor's own, to look around in and change at will.</summary>
    public async Task<(PressRecord? Press, string? Problem)> AddSampleAsync() =>
        await archives.ImportAsync(SampleFrom) is { Succeeded: true } imported
            ? (imported.Value, null)
            : (null, Say($"The sample press that came with the program cannot be read."));

    /// <summary>Settings that suit a viewer's region.</summary>
    public static NewPress Suited(CultureInfo culture)
    {
        var region = culture.IsNeutralCulture || culture.Name.Length == 0 ? null : new RegionInfo(culture.Name);
        var inches = region is { IsMetric: false, TwoLetterISORegionName: "US" };
        var currency = region is not null && Currency.Find(region.ISOCurrencySymbol) is { } known ? known.Code : "EUR";
        var letter = region?.TwoLetterISORegionName is "US" or "CA" or "MX";
        return new NewPress("", currency, inches ? UnitSystem.Imperial : UnitSystem.Metric, letter ? PaperRegion.Us : PaperRegion.Iso);
    }

    /// <summary>Works the figures out.</summary>
    public FirstAnswer WorkOut(FirstNumber number, Currency currency)
    {
        var prepared = PreparedJob.Prepare(number.Job(currency, Today));
        if (!prepared.Succeeded)
        {
            return new FirstAnswer(null, null, prepared.Problems);
        }

        var shape = BookShape.Of(prepared.Value.Block, prepared.Value.Impose(), null);
        var estimate = prepared.Value.Estimate(number.Quantity);
        return estimate.Succeeded ? new FirstAnswer(estimate.Value, shape, []) : new FirstAnswer(null, shape, estimate.Problems);
    }

    /// <summary>Sets up a press with the book, its papers and the shop's prices, all at once.</summary>
    /// <returns>The press, or what stands in the way of setting it up; then nothing is stored.</returns>
    public async Task<(PressRecord? Press, string? Problem)> SetUpAsync(NewPress press, string title, FirstNumber number)
    {
        var book = new FirstBook(number.Edition(title), BookShape.PlainCover, number.Stocks, number.Shop(Say($"My print shop"), Today), number.Quantity);
        var made = await archives.SetUpAsync(press, book);
        return made.Succeeded ? (made.Value, null) : (null, Words.Standing(made.Problems));
    }
}
