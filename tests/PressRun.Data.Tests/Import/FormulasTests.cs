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
    [InlineData("", "")]
    public void What_a_spreadsheet_would_run_gets_an_apostrophe(string text, string inFile)
    {
        Assert.Equal(inFile, Formulas.Defuse(text));
        Assert.Equal(text, Formulas.Restore(inFile));
    }

    [Fact]
    public void Every_text_comes_back_as_it_was() =>
        Pick.From('\'', '=', '+', '-', '@', '\t', '\r', 'a', ' ', '1').Array[0, 6].Select(signs => new string(signs))
            .Sample(text => Formulas.Restore(Formulas.Defuse(text)) == text && !Runs(Formulas.Defuse(text)));

    // A sign before nothing but digits is a number; before anything else it begins a formula.
    private static bool Runs(string inFile) =>
        inFile is ['=' or '+' or '@' or '\t' or '\r', ..] || (inFile is ['-', .. var rest] && !(rest.Length > 0 && rest.All(char.IsAsciiDigit)));
}
