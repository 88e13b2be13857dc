using System.Globalization;
using PressRun.Data.Import.Tables;
using PressRun.Web.Libraries;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Architecture;

namespace PressRun.Web.Tests.Libraries;

public class CellWordsTests
{
    private sealed class OpenCell : CellKind
    {
        public override IReadOnlyList<string> Choices => ["Home"];

        public override CellRead Read(string text, CellManners manners, string? unit = null) => CellRead.Of(text);

        public override string Write(object value, CellManners manners) => (string)value;
    }

    public static TheoryData<string> Languages => [.. Translation.Languages.Select(language => language.Name)];

    // A cell is edited as it is shown: what it then says must be what it was.
    [Theory]
    [MemberData(nameof(Languages))]
    public void What_a_cell_shows_is_understood_when_it_is_typed(string language)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = new CultureInfo(language);
        try
        {
            foreach (var kind in TextsOfTables.Columns.Select(column => column.Kind).Where(kind => kind.IsClosed))
            {
                Assert.Equal(kind.Choices, kind.Choices.Select(word => CellWords.Meant(kind, $" {CellWords.Shown(kind, word)} ").Trim()));
            }
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void What_a_person_named_is_shown_as_it_is() => Assert.Equal("Home", CellWords.Shown(new OpenCell(), "Home"));

    [Fact]
    public void A_head_within_a_sentence_is_small_and_has_its_unit_beside_it_elsewhere()
    {
        var caliper = TextsOfTables.Columns.First(column => column.Key == "caliper");
        Assert.Equal("caliper", CellWords.Within(caliper));
        Assert.Equal("Caliper (µm)", CellWords.Head(caliper, new CellManners(CultureInfo.GetCultureInfo("en"), PressRun.Data.Presses.UnitSystem.Metric)));
    }
}
