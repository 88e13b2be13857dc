using System.Text.RegularExpressions;

namespace PressRun.Data.Import.Csv;

/// <summary>Keeps spreadsheets from running what only looks like a formula. A cell that begins with <c>=</c>, <c>+</c>, <c>-</c>, <c>@</c>, a tab or
/// a carriage return, behind any number of apostrophes, gets one more apostrophe in a file and loses one when it is read, so that every text comes
/// back as it was. The same goes for what follows a mark within a cell that may part cells to whoever opens the file, as each country's programs have their own. A number below
/// zero runs nothing and stays a number that a spreadsheet adds up.</summary>
public static partial class Formulas
{
    private const char Guard = '\'';

    /// <summary>The text as it stands in a file.</summary>
    public static string Defuse(string text)
    {
        var inner = WithinCell().Replace(text, Guard + "$0");
        return MayRun(inner) && !NegativeNumber().IsMatch(inner) ? Guard + inner : inner;
    }

    /// <summary>The text that was meant.</summary>
    public static string Restore(string text) =>
        WithinCell().Replace(text.StartsWith(Guard) && MayRun(text) ? text[1..] : text, guarded => guarded.Value.StartsWith(Guard) ? guarded.Value[1..] : guarded.Value);

    // Also the wide forms of the four signs, which some spreadsheets read as the narrow ones.
    private static bool MayRun(string text) =>
        text.AsSpan().TrimStart(Guard) is [var first, ..] && first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';

    // Apostrophes and a sign after a mark that parts cells or lines somewhere; plus and minus before a plain number, or before nothing, run nothing, unless blanks follow, which a formula may hold.
    [GeneratedRegex(@"(?<=[;,\t|\r\n])'*(?:[=@\uFF1D\uFF20]|[+\-\uFF0B\uFF0D](?![0-9]*(?:[.,][0-9]+)?(?:[;,]|\z)))")]
    private static partial Regex WithinCell();

    [GeneratedRegex(@"\A-[0-9]+([.,][0-9]+)?\z")]
    private static partial Regex NegativeNumber();
}
