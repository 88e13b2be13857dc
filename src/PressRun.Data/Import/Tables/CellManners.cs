using System.Globalization;
using PressRun.Data.Presses;

namespace PressRun.Data.Import.Tables;

/// <summary>How the text of cells is understood and written: by whose decimal mark and dates, and in which units numbers without one are.</summary>
/// <param name="Culture">Decimal mark and dates.</param>
/// <param name="Units">Millimetres and grams, or inches and ounces.</param>
/// <param name="MinorDigits">Decimals of the press's currency; an amount is written with at least so many.</param>
public sealed record CellManners(CultureInfo Culture, UnitSystem Units, int MinorDigits = 2)
{
    /// <summary>True where the decimal mark is a comma.</summary>
    public bool HasDecimalComma => Culture.NumberFormat.NumberDecimalSeparator == ",";
}

/// <summary>What a cell was read as.</summary>
/// <param name="Value">The value, of the type that the kind of cell names; null where there is none.</param>
/// <param name="Rule">What would be right; null where the cell is.</param>
public readonly record struct CellRead(object? Value, string? Rule)
{
    /// <summary>A cell that is right.</summary>
    public static CellRead Of(object value) => new(value, null);

    /// <summary>A cell that is not.</summary>
    public static CellRead Refused(string rule) => new(null, rule);
}

/// <summary>What the cells of a column hold: how their text is read and written. A kind knows no empty text: that is the column's to judge.</summary>
public abstract class CellKind
{
    /// <summary>True where the cells stand at the right edge, under each other.</summary>
    public virtual bool IsNumeric => false;

    /// <summary>The words that can be chosen; empty where anything can be written.</summary>
    public virtual IReadOnlyList<string> Choices => [];

    /// <summary>True where nothing but <see cref="Choices"/> is right.</summary>
    public virtual bool IsClosed => false;

    /// <summary>The unit of a number without one, as it stands in the column's head; null where there is none.</summary>
    public virtual string? UnitOf(CellManners manners) => null;

    /// <summary>Units that a head may name instead, the usual one first; empty where there are none.</summary>
    public virtual IReadOnlyList<string> Units => [];

    /// <summary>Reads a text that is not blank.</summary>
    /// <param name="text">The text.</param>
    /// <param name="manners">How it is understood.</param>
    /// <param name="unit">Unit of a number without one, of <see cref="Units"/>; null for the manners' own.</param>
    public abstract CellRead Read(string text, CellManners manners, string? unit = null);

    /// <summary>Writes a value so that reading it with the same manners gives the same value.</summary>
    public abstract string Write(object value, CellManners manners);
}
