using System.Text.RegularExpressions;
using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;

namespace PressRun.Data.Import.Csv;

/// <summary>What the head of a column in somebody's file says: its words, the unit it names, and the step that it may be the price of.</summary>
internal sealed partial class HeadWords
{
    // No pattern below takes long over so few characters, whatever they are; more are not a head.
    private const int MostHead = 200;
    private const int Exact = 100;
    private const int AllWords = 70;
    private const int Part = 45;
    // The last part of a compound says what it is: Papiergewicht is a weight.
    private const int LastPart = 50;

    private static readonly Dictionary<string, string> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = "mm", ["millimetre"] = "mm", ["cm"] = "cm", ["in"] = "in", ["inch"] = "in", ["inches"] = "in", ["\""] = "in",
        ["um"] = "\u00B5m", ["\u00B5m"] = "\u00B5m", ["\u03BCm"] = "\u00B5m", ["micron"] = "\u00B5m", ["microns"] = "\u00B5m",
        ["g"] = "g", ["gr"] = "g", ["gram"] = "g", ["grams"] = "g", ["kg"] = "kg", ["oz"] = "oz", ["ounces"] = "oz", ["lb"] = "lb", ["lbs"] = "lb",
        ["gsm"] = "gsm", ["g/m2"] = "gsm", ["g/m\u00B2"] = "gsm", ["g/qm"] = "gsm",
        ["lb text"] = "lb text", ["lb cover"] = "lb cover", ["lb bond"] = "lb bond", ["lb index"] = "lb index",
        ["sheet"] = SideCell.SheetOfTwo, ["sheets"] = SideCell.SheetOfTwo, ["bogen"] = SideCell.SheetOfTwo, ["feuille"] = SideCell.SheetOfTwo, ["feuilles"] = SideCell.SheetOfTwo,
        ["%"] = PercentCell.PerCent, ["percent"] = PercentCell.PerCent, ["of 1"] = PercentCell.Fraction,
    };

    private readonly string folded;
    private readonly string[] words;
    // Without what a price is for (per 100 sheets, je Seite): that names no column of its own.
    private readonly string[] named;

    public HeadWords(string text)
    {
        var head = text.Length > MostHead ? text[..MostHead] : text;
        var bracket = Bracketed().Match(head);
        var bare = bracket.Success ? head.Remove(bracket.Index, bracket.Length) : head;
        Unit = bracket.Success && Units.TryGetValue(bracket.Groups["unit"].Value.Trim(), out var unit) ? unit : ForMany(head) ?? LastWordUnit(bare);
        folded = SearchText.Fold(SplitCamel().Replace(bare, " $1"));
        words = folded.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        named = PriceFor().Match(folded) is { Success: true, Index: > 0 } priced ? folded[..priced.Index].Split(' ', StringSplitOptions.RemoveEmptyEntries) : words;
        var step = StepHead().Match(head.Trim());
        StepFrom = step.Success && !step.Groups["mass"].Success ? step.Groups["number"].Value : null;
        StepUpTo = step.Success && step.Groups["mass"].Success
            ? $"{(step.Groups["last"].Success ? step.Groups["last"].Value : step.Groups["number"].Value)} {step.Groups["mass"].Value}"
            : null;
    }

    /// <summary>The unit that the head names, as the kinds of cells write it.</summary>
    public string? Unit { get; }

    /// <summary>The first unit of the step that it heads (<c>from 100</c>, <c>100-249</c>, <c>100+</c>); null where it heads none.</summary>
    public string? StepFrom { get; }

    /// <summary>The mass of the step that it heads (<c>up to 100 g</c>); null where it heads none.</summary>
    public string? StepUpTo { get; }

    /// <summary>How well it fits a column, 0 to 100.</summary>
    public int Fit(Column column)
    {
        if (words.Length == 0)
        {
            return 0;
        }

        if (folded == SearchText.Fold(SplitCamel().Replace(column.Key, " $1")) || folded == SearchText.Fold(column.Title))
        {
            return Exact;
        }

        var best = 0;
        var heard = column.Kind is MoneyCell ? words : named;
        for (var rank = 0; rank < column.Words.Count; rank++)
        {
            var wanted = column.Words[rank].Split(' ');
            var fit = column.Words[rank] == folded ? Exact - 1
                : wanted.All(heard.Contains) ? AllWords + (wanted.Length * 5) - heard.Length
                : wanted.Length == 1 && heard.Any(word => wanted[0].Length > 3 && word.EndsWith(wanted[0], StringComparison.Ordinal)) ? LastPart
                : wanted.Length == 1 && heard.Any(word => word.Length > 3 && word.StartsWith(wanted[0], StringComparison.Ordinal)) ? Part
                : 0;
            best = Math.Max(best, fit - Math.Min(rank, 10));
        }

        return best;
    }

    private static string? LastWordUnit(string head)
    {
        var parts = head.Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts.Length > 0 && Units.TryGetValue(parts[^1].TrimEnd('.'), out var unit) ? unit : null;
    }

    // A price of many at once, as paper is often priced: per 100, je 1.000.
    private static string? ForMany(string head) => Many().Match(head) is { Success: true } many
        ? many.Groups["thousand"].Success ? MoneyCell.PerThousand : MoneyCell.PerHundred
        : null;

    [GeneratedRegex(@"(?:\b(?:per|je|pro|for|f\u00FCr|pour|les|por|cada)\s+|/\s*)(?:100(?!\d)|(?<thousand>1[.,'\s]?000(?!\d)|thousand|tausend|mille|mil)\b)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Many();

    [GeneratedRegex(@"\b(?:per|je|pro|pour|les|par|por|cada)\s+\S")]
    private static partial Regex PriceFor();

    [GeneratedRegex(@"[\(\[](?<unit>[^\)\]]*)[\)\]]|,\s*(?<unit>[^\s,]+)\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Bracketed();

    [GeneratedRegex("(?<=[a-z])([A-Z])")]
    private static partial Regex SplitCamel();

    [GeneratedRegex(
        @"^(?:price|preis|prix|each)?\s*(?:from|ab|up\s+to|to|bis|from\s+qty|qty|>=|\u2265|<=|\u2264|\u00E0\s+partir\s+de|jusqu'\u00E0)?\s*(?<number>\d+)\s*(?:(?:-|\u2013|to|bis)\s*(?<last>\d+))?\s*\+?\s*(?:(?<mass>g|kg|oz|lb)|sheets?|bogen|feuilles?|copies|units|pcs|st\u00FCck|ex\.?|and\s+up)?$",
        RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex StepHead();
}
