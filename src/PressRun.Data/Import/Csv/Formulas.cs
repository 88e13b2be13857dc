using System.Text.RegularExpressions;

namespace PressRun.Data.Import.Csv;

/// <summary>Keeps spreadsheets from running what only looks like a formula. A cell that begins with <c>=</c>, <c>+</c>, <c>-</c>, <c>@</c>, a tab or
/// a carriage return, behind any number of apostrophes, gets one more apostrophe in a file and loses one when it is read, so that every text comes
/// back as it was. A number below zero runs nothing and stays a number that a spreadsheet adds up.</summary>
public static partial class Formulas
{
    private const char Guard = '\'';

    /// <summary>The text as it stands in a file.</summary>
    public static string Defuse(string text) => MayRun(text) && !NegativeNumber().IsMatch(text) ? Guard + text : text;

    /// <summary>The text that was meant.</summary>
    public static string Restore(string text) => text.StartsWith(Guard) && MayRun(text) ? text[1..] : text;

    // Also the wide forms of the four signs, which some spreadsheets read as the narrow ones.
    private static bool MayRun(string text) =>
        text.AsSpan().TrimStart(Guard) is [var first, ..] && first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';

    [GeneratedRegex(@"\A-[0-9]+([.,][0-9]+)?\z")]
    private static partial Regex NegativeNumber();
}
