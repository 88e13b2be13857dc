using CsCheck;
using PressRun.Data.Import.Csv;

namespace PressRun.Data.Tests.Import;

public sealed class FormulasTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+49", "'+49")]
    [InlineData("-5", "-5")]
    [InlineData("-41,17", "-41,17")]
    [InlineData("'-5", "''-5")]
    [InlineData("-", "'-")]
    [InlineData("-5+A1", "'-5+A1")]
    [InlineData("-5\n", "'-5\n")]
    [InlineData("-1-1", "'-1-1")]
    [InlineData("@now", "'@now")]
    [InlineData("\tx", "'\tx")]
    [InlineData("\rx", "'\rx")]
    [InlineData("'=quoted", "''=quoted")]
    [InlineData("Drifter's cap", "Drifter's cap")]
    [InlineData("'tween deck", "'tween deck")]
    [InlineData("x;=1+1;y", "x;'=1+1;y")]
    [InlineData("x,'@now", "x,''@now")]
    [InlineData("a\n=1+1;", "a\n'=1+1;")]
    [InlineData("x;-1+A1", "x;'-1+A1")]
    [InlineData("about 5,-; -2;-2,50;+3", "about 5,-; -2;-2,50;+3")]
    [InlineData("x;- A1", "x;'- A1")]
    [InlineData("x;-2|y", "x;'-2|y")]
    [InlineData("", "")]
    public void What_a_spreadsheet_would_run_gets_an_apostrophe(string text, string inFile)
    {
        Assert.Equal(inFile, Formulas.Defuse(text));
        Assert.Equal(text, Formulas.Restore(inFile));
    }

    [Fact]
    public void Every_text_comes_back_as_it_was() =>
        Pick.From('\'', '=', '+', '-', '@', '\t', '\r', 'a', ' ', '1', ';', ',').Array[0, 8].Select(signs => new string(signs))
            .Sample(text => Formulas.Restore(Formulas.Defuse(text)) == text && !Runs(Formulas.Defuse(text)) && Parted(Formulas.Defuse(text)).All(cell => !Runs(cell)));

    // What a program finds in the cells that takes another mark for the one between them; a sign before a plain number, or alone, runs nothing.
    private static IEnumerable<string> Parted(string inFile) => inFile.Split(';').Skip(1).Concat(inFile.Split(',').Skip(1))
        .Where(cell => cell is not ['\t' or '\r', ..] && !(cell is ['+' or '-', .. var rest] && (rest.TrimStart('1') is "" or [';' or ',', ..])));

    // A sign before nothing but digits is a number; before anything else it begins a formula.
    private static bool Runs(string inFile) =>
        inFile is ['=' or '+' or '@' or '\t' or '\r', ..] || (inFile is ['-', .. var rest] && !(rest.Length > 0 && rest.All(char.IsAsciiDigit)));
}
