using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries.Files;

/// <summary>A table that a file can be brought into.</summary>
/// <param name="Key">Its name on the page.</param>
/// <param name="Title">What its rows are, in English and in the plural, as their shape has it: <c>papers</c>. <see cref="RowWords"/> knows it.</param>
/// <param name="Columns">Its columns.</param>
public sealed record ImportTable(string Key, string Title, IReadOnlyList<Column> Columns)
{
    /// <summary>What its rows are, as the viewer reads it.</summary>
    public string Told => RowWords.Of(Title);

    /// <summary>So many of its rows: <c>1 print price</c>, <c>3 ways of selling</c>.</summary>
    /// <param name="number">How many.</param>
    /// <param name="count">Writes a count.</param>
    public string Counted(int number, Func<decimal, string> count) => RowWords.Of(Title, number, count(number));
}

/// <summary>What bringing in a file came to.</summary>
/// <param name="Said">What was done, in a sentence; null where nothing was.</param>
/// <param name="Problem">What stood in the way; null where nothing did.</param>
public sealed record ImportDone(string? Said, string? Problem);

/// <summary>Where a file goes: a library, or a price list.</summary>
public interface IImportTarget
{
    /// <summary>What is brought in, as the viewer reads it: <c>papers</c>.</summary>
    string Name { get; }

    /// <summary>What a person is told before a file is taken.</summary>
    string Hint => Say($"Take the shop's price list or your own table as it is. The columns are guessed; you look at the guess, then at what would come of it.");

    /// <summary>Address of the page that shows it.</summary>
    string BackTo { get; }

    /// <summary>Printings whose next number of copies what came in says something of, the first few; none for a library.</summary>
    IReadOnlyList<(string Address, string Name)> Decides => [];

    /// <summary>Tables that the file may be of; the likeliest is guessed.</summary>
    IReadOnlyList<ImportTable> Tables { get; }

    /// <summary>Reads the file through without storing anything.</summary>
    CsvPreview Preview(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel);

    /// <summary>Brings the file in, all of it or nothing.</summary>
    Task<ImportDone> RunAsync(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel);

    /// <summary>Takes back what was brought in last. Answers null when that is done, otherwise what stands in the way.</summary>
    Task<string?> TakeBackAsync();
}

/// <summary>Takes a file into a dated price list: with terms of the shop that its notes state, those that a person agreed to, and into the list that they choose.</summary>
public interface ITakesTerms
{
    /// <summary>The list as it is.</summary>
    Shop List { get; }

    /// <summary>Address of its shop.</summary>
    string ShopAddress { get; }

    /// <summary>What comes in with the file.</summary>
    IReadOnlyList<NotedTerm> Taken { get; set; }

    /// <summary>Which list it comes into.</summary>
    ListPlace Place { get; }

    /// <summary>Begins with a file: what was chosen for the one before holds no more.</summary>
    void Begin();

    /// <summary>Reads what the list would be and which plans go by it, for a file whose cells are right.</summary>
    Task ReadAsync(ImportTable table, CsvSource source, CsvMapping mapping, CancellationToken cancel);

    /// <summary>What the list that was read last does to the plans that go by the open one, if it comes in its place.</summary>
    /// <param name="terms">Terms of the notes that come with it.</param>
    PlanChanges Changes(IReadOnlyList<NotedTerm> terms);
}

/// <summary>A row that may be there already.</summary>
/// <param name="Row">Its row in the file.</param>
/// <param name="What">What it says.</param>
/// <param name="Why">What it shares with what is there.</param>
public sealed record FoundDuplicate(int Row, string What, string Why);

/// <summary>Finds rows that may be there already, and leaves them out unless it is said otherwise.</summary>
public interface IFindsDuplicates
{
    /// <summary>The first of them.</summary>
    IReadOnlyList<FoundDuplicate> Duplicates { get; }

    /// <summary>How many there are in all.</summary>
    int DuplicateCount { get; }

    /// <summary>How many rows will be left out.</summary>
    int LeftOut { get; }

    /// <summary>True where a row will come in.</summary>
    bool BringsIn(int row);

    /// <summary>Says whether one of them comes in.</summary>
    void Bring(int row, bool bring);

    /// <summary>Says whether all of them come in.</summary>
    void BringAll(bool bring);

    /// <summary>Looks for them in a file whose cells are right.</summary>
    Task FindAsync(CsvSource source, CsvMapping mapping, CancellationToken cancel);
}
