using PressRun.Data.Import.Tables;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Kinds of cells that several tables share, and the values in a row by type.</summary>
internal static class Cells
{
    public static CellKind Name { get; } = new TextCell(JobRules.Id with { Sentence = "Write a name: text on one line, not blank, at most 200 characters." });

    public static CellKind Id { get; } = new TextCell(JobRules.Id);

    public static CellKind Money { get; } = new MoneyCell(JobRules.Amount with { Sentence = "Write an amount of money, 0 or more, such as 12.50." });

    public static CellKind MoneyOfSide { get; } = new MoneyCell(JobRules.Amount with { Sentence = "Write an amount of money, 0 or more, such as 0.06." }, ofSide: true);

    public static CellKind Percent { get; } = new PercentCell(JobRules.Rate, "Write a rate from 0 to 100 per cent.");

    public static CellKind PercentBelowAll { get; } = new PercentCell(JobRules.RateBelowOne, "Write a rate from 0 up to but not including 100 per cent.");

    public static CellKind YesNo { get; } = new ChoiceCell<bool>(
        ("yes", true), ("no", false), ("true", true), ("false", false), ("ja", true), ("nein", false), ("oui", true), ("non", false), ("1", true), ("0", false), ("x", true));

    public static CellKind StepFrom { get; } = new NumberCell(JobRules.StepFrom);

    public static CellKind StepFromSide { get; } = new SideCell(JobRules.StepFrom);

    public static Column IdColumn(string words) => new("id", "Id", Id) { Role = ColumnRole.Kept, OfThing = true, Words = Words(words) };

    public static Column NameColumn(string title, string words) => new("name", title, Name) { Required = true, OfThing = true, Words = Words(words) };

    public static Column Archived { get; } = new("archived", "Archived", YesNo) { Role = ColumnRole.Kept, OfThing = true, Words = Words("archived|retired|inactive") };

    /// <summary>Words and phrases of heads, parted by bars.</summary>
    public static IReadOnlyList<string> Words(string words) => words.Split('|');

    public static string Text(this object?[] row, int column) => (string?)row[column] ?? "";

    public static T? Maybe<T>(this object?[] row, int column)
        where T : struct => (T?)row[column];

    public static T Value<T>(this object?[] row, int column, T otherwise = default)
        where T : struct => (T?)row[column] ?? otherwise;
}
