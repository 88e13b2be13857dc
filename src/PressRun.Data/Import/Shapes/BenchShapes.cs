using PressRun.Data.Import.Tables;
using PressRun.Engine.Bench;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>Steps of the work at the press's own table, one a row, in the order of work.</summary>
public sealed class BenchStepShape : TableShape<BenchStep>
{
    private const int NameOf = 0;
    private const int SetUp = 1;
    private const int PerCopy = 2;
    private const int PerPiece = 3;
    private const int PerCut = 4;
    private const int Pile = 5;
    private const int Spoilage = 6;

    private static readonly NumberRule CopiesPerPile =
        new("Write how many copies are cut together, a whole number from 1 to 1,000,000.", 1m, 1_000_000m, IsWhole: true);

    private static readonly NumberRule Time = JobRules.Time with { Sentence = "Write a time from 0 to 1,000,000 as a number." };

    /// <inheritdoc/>
    public override string Name => "steps";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.NameColumn("Step", "name|step|operation|task"),
        new("setupMinutes", "Set-up", new NumberCell(Time, "min")) { Words = Cells.Words("set up|setup|setup minutes|minutes") },
        new("secondsPerCopy", "A copy", new NumberCell(Time, "s")) { Words = Cells.Words("a copy|per copy|seconds per copy") },
        new("secondsPerPiece", "A piece", new NumberCell(Time, "s")) { Words = Cells.Words("a piece|per piece|seconds per piece") },
        new("secondsPerCut", "A cut", new NumberCell(Time, "s")) { Words = Cells.Words("a cut|per cut|seconds per cut") },
        new("copiesPerPile", "Cut together", new NumberCell(CopiesPerPile, "copies")) { Words = Cells.Words("cut together|copies per pile|pile") },
        new("spoilage", "Spoiled", Cells.PercentBelowAll) { Words = Cells.Words("spoiled|spoilage|waste") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(BenchStep thing)
    {
        yield return
        [
            thing.Name, Unless0(thing.SetUpMinutes), Unless0(thing.SecondsPerCopy), Unless0(thing.SecondsPerPiece), Unless0(thing.SecondsPerCut),
            thing.CopiesPerPile == 1 ? null : (decimal)thing.CopiesPerPile, Unless0(thing.Spoilage),
        ];
    }

    /// <inheritdoc/>
    public override BenchStep Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        return new BenchStep(
            row.Text(NameOf),
            row.Value<decimal>(SetUp),
            row.Value<decimal>(PerCopy),
            row.Value<decimal>(PerPiece),
            row.Value<decimal>(PerCut),
            (int)row.Value(Pile, 1m),
            row.Value<decimal>(Spoilage));
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(BenchStep thing) => (thing.Name, NameOf);

    private static decimal? Unless0(decimal number) => number == 0m ? null : number;
}

/// <summary>Things used up, one a row.</summary>
public sealed class ConsumableShape : TableShape<Consumable>
{
    /// <inheritdoc/>
    public override string Name => "things used up";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.NameColumn("Used up", "name|used up|consumable|item"),
        new("perCopy", "A copy", Cells.Money) { Required = true, Words = Cells.Words("a copy|per copy|price|cost") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(Consumable thing)
    {
        yield return [thing.Name, thing.PerCopy];
    }

    /// <inheritdoc/>
    public override Consumable Thing(IReadOnlyList<object?[]> rows, Refuse refuse) => new(rows[0].Text(0), rows[0].Value<decimal>(1));

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(Consumable thing) => (thing.Name, 0);
}
