using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.Web.Quotes;

/// <summary>A line of a frozen costing.</summary>
/// <param name="Label">What it is for, as it was frozen.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Each">Price of one.</param>
/// <param name="Amount">In whole minor units.</param>
public sealed record FrozenLine(string Label, decimal Quantity, decimal Each, decimal Amount);

/// <summary>A part of a frozen costing.</summary>
/// <param name="Name">Its name.</param>
/// <param name="SheetsPerCopy">Not rounded; null where whole books are priced.</param>
public sealed record FrozenPart(string Name, decimal? SheetsPerCopy);

/// <summary>
/// The figures of a quote as they were frozen, read from its result and not worked out again: a later version of the program that would
/// reckon otherwise changes nothing of a quote that stands.
/// </summary>
/// <param name="Lines">They add up to the landed cost, less tax that comes back.</param>
/// <param name="Parts">In order.</param>
/// <param name="Tax">The shop's tax, whether or not it comes back.</param>
/// <param name="ShopTotal">What the shop is paid.</param>
/// <param name="BenchHours">Hours at the bench.</param>
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
    decimal BenchHours,
    decimal BenchLabour,
    decimal Consumables,
    decimal FixedCosts,
    decimal Landed,
    decimal UnitCost,
    Mass Mass,
    Length Thickness)
{
    /// <summary>Reads a frozen result.</summary>
    /// <param name="result">JSON as <c>estimate</c> answers it.</param>
    public static FrozenFigures Read(byte[] result)
    {
        using var document = JsonDocument.Parse(result);
        var root = document.RootElement;
        var copy = root.GetProperty("copy");
        return new FrozenFigures(
            [.. root.GetProperty("lines").EnumerateArray().Select(line => new FrozenLine(
                line.GetProperty("label").GetString()!, Number(line, "quantity"), Number(line, "each"), Number(line, "amount")))],
            [.. root.GetProperty("parts").EnumerateArray().Select(part => new FrozenPart(part.GetProperty("name").GetString()!, MayBe(part, "sheetsPerCopy")))],
            Number(root, "tax"),
            Number(root, "shopTotal"),
            Number(root, "benchHours"),
            Number(root, "benchLabour"),
            Number(root, "consumables"),
            Number(root, "fixedCosts"),
            Number(root, "landedCost"),
            Number(root, "unitCost"),
            Mass.FromGrams(Number(copy, "massG")),
            Length.FromMillimetres(Number(copy, "thicknessMm")));
    }

    private static decimal Number(JsonElement element, string name) => MayBe(element, name) ?? 0m;

    private static decimal? MayBe(JsonElement element, string name) => element.GetProperty(name) switch
    {
        { ValueKind: JsonValueKind.Number } number => number.GetDecimal(),
        { ValueKind: JsonValueKind.String } text when NumberText.TryParse(text.GetString()!, out var number) => number,
        _ => null,
    };
}
