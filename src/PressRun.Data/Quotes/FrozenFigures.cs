using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Quotes;

/// <summary>A line of a frozen costing.</summary>
/// <param name="Label">What it is for, as it was frozen.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Each">Price of one.</param>
/// <param name="Amount">In whole minor units.</param>
/// <param name="Code">What kind of line it is, by the contract's code; empty where that was not frozen.</param>
public sealed record FrozenLine(string Label, decimal Quantity, decimal Each, decimal Amount, string Code = "");

/// <summary>A part of a frozen costing.</summary>
/// <param name="Name">Its name.</param>
/// <param name="SheetsPerCopy">Not rounded; null where whole books are priced.</param>
public sealed record FrozenPart(string Name, decimal? SheetsPerCopy);

/// <summary>What the copies of a run's second half are.</summary>
/// <param name="Copies">Good copies of it.</param>
/// <param name="Mass">Of one.</param>
/// <param name="Thickness">Of one.</param>
public sealed record FrozenHalf(long Copies, Mass Mass, Length Thickness);

/// <summary>
/// The figures of a quote as they were frozen, read from its result and not worked out again: a later version of the program that would
/// reckon otherwise changes nothing of a quote that stands.
/// </summary>
/// <param name="Lines">They add up to the landed cost, less tax that comes back.</param>
/// <param name="Parts">In order.</param>
/// <param name="Tax">The shop's tax, whether or not it comes back.</param>
/// <param name="ShopTotal">What the shop is paid.</param>
/// <param name="BenchLabour">What they cost.</param>
/// <param name="Consumables">What the bench uses up.</param>
/// <param name="FixedCosts">The edition's own costs.</param>
/// <param name="Landed">All of it.</param>
/// <param name="UnitCost">Of a copy, to the digits that were frozen.</param>
/// <param name="Mass">Of a copy.</param>
/// <param name="Thickness">Of a copy.</param>
public sealed record FrozenFigures(
    IReadOnlyList<FrozenLine> Lines,
    IReadOnlyList<FrozenPart> Parts,
    decimal Tax,
    decimal ShopTotal,
    decimal BenchLabour,
    decimal Consumables,
    decimal FixedCosts,
    decimal Landed,
    decimal UnitCost,
    Mass Mass,
    Length Thickness)
{
    /// <summary>The copies of the second half, where half of the run has a part on another paper; <see cref="Mass"/> and <see cref="Thickness"/> are then those of the first. Null where all are alike.</summary>
    public FrozenHalf? SecondHalf { get; init; }

    private const string Rule = "Write a costing as estimate answers it.";

    // A name of a job file, and what it is the name of.
    private const int LongestLabel = 1_100;

    private static readonly TextRule Label = new("Write a text on one line, at most 1,100 characters.", LongestLabel, true);

    // Wider than any sum of what the contract lets a job hold, and narrow enough that sums of these stay what a decimal holds.
    private static readonly NumberRule Figure = new("Write a figure of a costing.", -1_000_000_000_000_000_000_000_000m, 1_000_000_000_000_000_000_000_000m);

    private static readonly NumberRule Copies = new("Write a figure of a costing.", 0m, 1_000_000m, IsWhole: true);

    /// <summary>Reads a frozen result.</summary>
    /// <param name="result">JSON as <c>estimate</c> answers it.</param>
    /// <returns>The figures; null where the text is no such answer.</returns>
    public static FrozenFigures? Read(byte[] result)
    {
        var opened = JsonText.Open(result, int.MaxValue);
        if (!opened.Succeeded)
        {
            return null;
        }

        using var document = opened.Value;
        var problems = new ProblemList();
        var figures = JsonBlock.Open(document.RootElement, JsonPath.Root, problems, Rule) is { } block ? Read(block) : null;
        return problems.IsEmpty ? figures : null;
    }

    // Members that are not shown may be whatever they were.
    private static FrozenFigures Read(JsonBlock root)
    {
        var (mass, thickness) = Copy(root);
        return new FrozenFigures(
            root.List("lines", Need.Must, Rule, (element, path) => JsonBlock.Open(element, path, root.Problems, Rule) is { } line
                ? new FrozenLine(line.Text("label", Need.Must, Label) ?? "", Number(line, "quantity"), Number(line, "each"), Number(line, "amount"), line.Text("code", Need.May, Label) ?? "")
                : null),
            root.List("parts", Need.Must, Rule, (element, path) => JsonBlock.Open(element, path, root.Problems, Rule) is { } part
                ? new FrozenPart(part.Text("name", Need.Must, Label) ?? "", part.Has("sheetsPerCopy") ? Number(part, "sheetsPerCopy") : null)
                : null),
            Number(root, "tax"),
            Number(root, "shopTotal"),
            Number(root, "benchLabour"),
            Number(root, "consumables"),
            Number(root, "fixedCosts"),
            Number(root, "landedCost"),
            Number(root, "unitCost"),
            mass,
            thickness)
        {
            SecondHalf = root.Block("halves", Need.May, Rule) is { } halves ? Half(halves) : null,
        };
    }

    private static FrozenHalf? Half(JsonBlock halves)
    {
        if (halves.Block("second", Need.Must, Rule) is not { } second)
        {
            return null;
        }

        var (mass, thickness) = Copy(second);
        return new FrozenHalf((long)(second.Number("copies", Copies, Need.Must) ?? 0m), mass, thickness);
    }

    private static (Mass Mass, Length Thickness) Copy(JsonBlock of) => of.Block("copy", Need.Must, Rule) is { } copy
        ? (Mass.FromGrams(Number(copy, "massG")), Length.FromMillimetres(Number(copy, "thicknessMm")))
        : default;

    private static decimal Number(JsonBlock block, string name) => block.Number(name, Figure, Need.Must) ?? 0m;
}
