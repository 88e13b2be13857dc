using PressRun.Data;
using PressRun.Data.Bench;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.Web.Libraries.Grid;
using PressRun.Web.Shared;

namespace PressRun.Web.Libraries;

/// <summary>A single figure of the bench.</summary>
/// <param name="Key">Its name among drafts.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Get">Its value.</param>
/// <param name="Set">The rates with another value; null stands for none.</param>
public sealed record BenchTerm(string Key, string Title, CellKind Kind, Func<BenchRates, object?> Get, Func<BenchRates, object?, BenchRates> Set);

/// <summary>The press's own table while it is edited; stored whole as soon as what changed is right.</summary>
public sealed class BenchTable
{
    private readonly BenchStore store;
    private readonly PressId press;
    private readonly BenchStepShape steps = new();
    private readonly ConsumableShape consumables = new();
    private LibraryItem<BenchRates> stored;

    private BenchTable(BenchStore store, PressId press, CellManners manners, LibraryItem<BenchRates> bench)
    {
        (this.store, this.press, Manners, stored) = (store, press, manners, bench);
        Steps = new GridDocument(steps.Columns.Count);
        Consumables = new GridDocument(consumables.Columns.Count);
        Show();
    }

    /// <summary>Its single figures.</summary>
    public static IReadOnlyList<BenchTerm> Terms =>
    [
        new("hour", Say($"An hour costs"), new MoneyCell(JobRules.Amount), rates => rates.HourlyRate, (rates, value) => rates with { HourlyRate = (decimal?)value ?? 0m }),
        new("hours", Say($"Hours are"), new ChoiceCell<bool>((Say($"one's own"), false), (Say($"paid in cash"), true)), rates => rates.Paid, (rates, value) => rates with { Paid = (bool?)value ?? false }),
        new("fittings", Say($"Fittings of a copy weigh"), new MassCell(JobRules.MassOrNone), rates => rates.FittingsMass, (rates, value) => rates with { FittingsMass = (Mass?)value ?? Mass.Zero }),
        new("overs", Say($"Overs"), new ChoiceCell<OversMode>((Say($"as many as usually spoil"), OversMode.Plain), (Say($"as many as make sure"), OversMode.Assured)),
            rates => rates.Overs.Mode, (rates, value) => rates with { Overs = rates.Overs with { Mode = (OversMode?)value ?? OversMode.Plain } }),
        new("sure", Say($"Sure to"), new PercentCell(JobRules.Confidence, Say($"Write a confidence between 0 and 100 per cent, both excluded, such as 95.")),
            rates => rates.Overs.Confidence, (rates, value) => rates with { Overs = rates.Overs with { Confidence = (decimal?)value ?? Overs.UsualConfidence } }),
        new("staples", Say($"Side staples from the spine"), new LengthCell(JobRules.Allowance),
            rates => rates.StapleFromSpine, (rates, value) => rates with { StapleFromSpine = (Length?)value ?? BenchRates.UsualStapleFromSpine }),
    ];

    /// <summary>The viewer's decimal mark and units.</summary>
    public CellManners Manners { get; }

    /// <summary>The rates as they are stored.</summary>
    public BenchRates Rates => stored.Item;

    /// <summary>Text of the steps.</summary>
    public GridDocument Steps { get; }

    /// <summary>Text of what is used up.</summary>
    public GridDocument Consumables { get; }

    /// <summary>What was found out about the steps.</summary>
    public GridState StepState { get; private set; } = GridState.Clean;

    /// <summary>What was found out about what is used up.</summary>
    public GridState ConsumableState { get; private set; } = GridState.Clean;

    /// <summary>Columns of the steps.</summary>
    public IReadOnlyList<Column> StepColumns => steps.Columns;

    /// <summary>Columns of what is used up.</summary>
    public IReadOnlyList<Column> ConsumableColumns => consumables.Columns;

    /// <summary>What stands in the way of the whole; null where nothing does.</summary>
    public string? Problem { get; private set; }

    /// <summary>Fetches the bench; null where there is no such press.</summary>
    public static async Task<BenchTable?> LoadAsync(BenchStore store, PressId press, CellManners manners) =>
        await store.LoadAsync(press) is { } bench ? new BenchTable(store, press, manners, bench) : null;

    /// <summary>A figure as text.</summary>
    public string Text(BenchTerm term) => term.Get(Rates) is { } value ? term.Kind.Write(value, Manners) : "";

    /// <summary>Stores a figure. Answers null when it is stored, otherwise what would be right.</summary>
    public async Task<string?> SetAsync(BenchTerm term, string text)
    {
        var read = text.Trim().Length == 0 ? default : term.Kind.Read(text.Trim(), Manners);
        return read.Rule is { } rule ? SayWhole(rule) : await StoreAsync(term.Set(Rates, read.Value));
    }

    /// <summary>Stores a step in the place of one as it was seen. Answers null when it is stored, otherwise what stands in the way.</summary>
    public async Task<string?> PutStepAsync(BenchStep seen, BenchStep step)
    {
        if (!Rates.Steps.Contains(seen))
        {
            return Say($"This was changed since, so it stays as it is.");
        }

        var problem = await StoreAsync(Rates with { Steps = [.. Rates.Steps.Select(other => other == seen ? step : other)] });
        if (problem is null)
        {
            Show();
        }

        return problem;
    }

    /// <summary>Fills the empty table of steps with common ones, to be changed where they stand.</summary>
    public Task StartAsync()
    {
        Steps.Put(Steps.Rows[^1].Key, [.. CommonSteps.Columns.Select(key => steps.Columns.ToList().FindIndex(column => column.Key == key))], CommonSteps.All, Say($"common steps"));
        return StepsChangedAsync();
    }

    /// <summary>Stores the steps, where they are right.</summary>
    public async Task StepsChangedAsync() =>
        StepState = await ChangedAsync(Steps, steps, things => Rates with { Steps = things });

    /// <summary>Stores what is used up, where it is right.</summary>
    public async Task ConsumablesChangedAsync() =>
        ConsumableState = await ChangedAsync(Consumables, consumables, things => Rates with { Consumables = things });

    private async Task<GridState> ChangedAsync<T>(GridDocument document, TableShape<T> shape, Func<IReadOnlyList<T>, BenchRates> with)
        where T : class
    {
        var rows = document.Rows.Where(row => !row.IsBlank).ToList();
        var read = shape.Read([.. rows.Select(row => row.Cells)], Manners);
        var all = rows.Select(row => row.Key).ToHashSet(StringComparer.Ordinal);
        if (read.Problems.Count > 0)
        {
            return new GridState(
                read.Problems.DistinctBy(problem => (problem.Row, problem.Column)).ToDictionary(problem => (rows[problem.Row].Key, problem.Column), problem => problem.Rule),
                new Dictionary<string, string>(),
                all);
        }

        if (await StoreAsync(with([.. read.Things.Select(thing => thing.Thing)])) is not null)
        {
            return GridState.Clean with { Unsaved = all };
        }

        document.Settle(
            read.Things.ToDictionary(thing => rows[thing.Row].Key, thing => (IReadOnlyList<string>)shape.Texts(thing.Thing, Manners).Single()), []);
        return GridState.Clean;
    }

    private async Task<string?> StoreAsync(BenchRates rates)
    {
        Problem = null;
        switch (await store.SaveAsync(press, stored with { Item = rates }))
        {
            case SaveResult<LibraryItem<BenchRates>>.Saved saved:
                stored = saved.Now;
                break;
            case SaveResult<LibraryItem<BenchRates>>.Conflict conflict:
                stored = conflict.Theirs;
                Show();
                Problem = Say($"Somebody else changed the bench in between. Theirs is shown; make your change again if it still holds.");
                break;
            case SaveResult<LibraryItem<BenchRates>>.Refused refused:
                Problem = Words.Standing(refused.Problems);
                break;
            default:
                Problem = Say($"The press has been taken out in between.");
                break;
        }

        return Problem;
    }

    private void Show()
    {
        Steps.Load(Rates.Steps.SelectMany((step, at) => steps.Texts(step, Manners).Select(texts => new GridRow($"step-{at}", texts))));
        Consumables.Load(Rates.Consumables.SelectMany((used, at) => consumables.Texts(used, Manners).Select(texts => new GridRow($"used-{at}", texts))));
    }
}
