using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.JobFile;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>The fields of a printing: what it really cost and took. Where the plan knows a figure it stands there first, but for times, which are
/// only worth writing down where a clock was looked at. Where a tally is written down, its figures stand there first.</summary>
/// <param name="view">The ledger it goes into.</param>
public sealed class PrintingEntry(CopiesView view)
{
    /// <summary>Fields by their names.</summary>
    public const string Shop = "shopPaid", Tax = "taxReclaimed", Consumables = "consumables", Fixed = "fixedCosts", Rate = "hourlyRate";

    /// <summary>Steps at the table: those of the tally, else of the plan, else of the press.</summary>
    public IReadOnlyList<(string Name, decimal? Planned)> Steps { get; } = view.Tallied is { } tallied
        ? [.. tallied.Steps.Select(step => (step.Step.Name, step.Step.Minutes))]
        : view.Plan is { } plan
        ? [.. plan.Steps.Select(step => (step.Name, (decimal?)step.Minutes))]
        : [.. view.Bench.Steps.Select(step => (step.Name, (decimal?)null))];

    /// <summary>Parts of the shop's invoice that can be written down one by one.</summary>
    public static IReadOnlyList<InvoicePart> Parts { get; } = [.. Enum.GetValues<InvoicePart>().Where(part => part != InvoicePart.Rest)];

    /// <summary>Names of all fields.</summary>
    public IEnumerable<string> Fields => [Shop, Tax, Consumables, Fixed, Rate, .. Parts.Select(Invoice), .. Enumerable.Range(0, Steps.Count).SelectMany(step => (string[])[Minutes(step), Started(step), Spoiled(step)])];

    /// <summary>A part of the invoice.</summary>
    public static string Invoice(InvoicePart part) => $"invoice.{part}";

    /// <summary>Minutes of a step.</summary>
    public static string Minutes(int step) => $"minutes.{step}";

    /// <summary>Copies that went into a step.</summary>
    public static string Started(int step) => $"started.{step}";

    /// <summary>Copies that went wrong at a step.</summary>
    public static string Spoiled(int step) => $"spoiled.{step}";

    /// <summary>What the plan says of a field that it does not fill in; null where it says nothing.</summary>
    public string? Planned(string field, PressFormat format) => field switch
    {
        Shop when view.Plan is { } plan => format.Money(plan.Estimate.Totals.ShopTotal),
        _ when field.StartsWith("minutes.", StringComparison.Ordinal) && Steps[StepOf(field)].Planned is { } minutes => format.Number(minutes, 0),
        _ => null,
    };

    /// <summary>What stands in a field where nothing was typed.</summary>
    public string Usual(string field, PressFormat format) => field switch
    {
        Shop => "",
        Tax => format.Money(view.Plan?.TaxReclaimed ?? 0m),
        Consumables => format.Money(view.Plan?.Estimate.Totals.Consumables ?? 0m),
        Fixed => format.Money(view.Plan?.Estimate.Totals.FixedCosts ?? 0m),
        Rate => format.Price(view.Plan?.HourlyRate ?? view.Bench.HourlyRate),
        _ when field.Contains('.', StringComparison.Ordinal) && !field.StartsWith("invoice.", StringComparison.Ordinal) && view.Tallied is { } tallied => Counted(field, tallied.Steps[StepOf(field)], format),
        _ when field.StartsWith("started.", StringComparison.Ordinal) => view.Plan is { } plan ? format.Count(plan.Estimate.CopiesToStart) : "",
        _ when field.StartsWith("spoiled.", StringComparison.Ordinal) => "0",
        _ => "",
    };

    // A step at which nobody counted took what came to it.
    private static string Counted(string field, StepTally step, PressFormat format) => field switch
    {
        _ when field.StartsWith("minutes.", StringComparison.Ordinal) => step.Seconds > 0 ? format.Number(step.Minutes, 1) : "",
        _ when field.StartsWith("started.", StringComparison.Ordinal) => format.Count(step.Started > 0 ? step.Started : Math.Max(0, step.Coming)),
        _ => format.Count(step.Spoiled),
    };

    internal PrintingActual Read(int copies, LedgerEntry entry, PressFormat format)
    {
        var amounts = Array.ConvertAll([Shop, Tax, Consumables, Fixed, Rate], field => entry.Must(field, Typed.Number(entry.Text(field), format.Culture), entry.AmountRule));
        var steps = Enumerable.Range(0, Steps.Count).Where(step => entry.Text(Minutes(step)).Trim().Length > 0)
            .Select(step => ReadStep(step, entry, format)).ToList();
        entry.Must<int>(Tax, amounts[1] <= amounts[0] ? 0 : null, Say($"No more tax can come back than the shop was paid."));
        var invoice = Parts.Where(part => entry.Text(Invoice(part)).Trim().Length > 0)
            .Select(part => new InvoiceLine(part, entry.Must(Invoice(part), Typed.Number(entry.Text(Invoice(part)), format.Culture), entry.AmountRule))).ToList();
        return new PrintingActual(copies, amounts[0], amounts[1], amounts[2], amounts[3], amounts[4], steps) { Invoice = invoice };
    }

    private StepActual ReadStep(int step, LedgerEntry entry, PressFormat format)
    {
        var minutes = Typed.Number(entry.Text(Minutes(step)), format.Culture) is { } read && JobRules.Time.Holds(read) ? read : (decimal?)null;
        var started = Typed.Count(entry.Text(Started(step)), format.Culture) is { } count && JobRules.Copies.Holds(count) ? count : (int?)null;
        var spoiled = Typed.Count(entry.Text(Spoiled(step)), format.Culture) is { } wrong && wrong <= (started ?? int.MaxValue) ? wrong : (int?)null;
        return new StepActual(
            Steps[step].Name,
            entry.Must<decimal>(Minutes(step), minutes, Say($"Write minutes such as 75, or leave it empty where nobody looked at the clock.")),
            entry.Must(Started(step), started, Say($"Write how many copies went into the step, such as 120.")),
            entry.Must(Spoiled(step), spoiled, Say($"Write how many of them went wrong: 0, or as many as went in at most.")));
    }

    private static int StepOf(string field) => int.Parse(field.AsSpan(field.IndexOf('.', StringComparison.Ordinal) + 1), System.Globalization.CultureInfo.InvariantCulture);
}
