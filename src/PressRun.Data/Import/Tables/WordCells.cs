using System.Globalization;
using PressRun.Data.Titles;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Tables;

/// <summary>A text on one line.</summary>
/// <param name="rule">What it must be.</param>
public sealed class TextCell(TextRule rule) : CellKind
{
    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        rule.Holds(text) ? CellRead.Of(text) : CellRead.Refused(rule.Sentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => (string)value;
}

/// <summary>One of a few words. The start of a word is enough where no other begins so.</summary>
/// <typeparam name="T">What the words stand for.</typeparam>
/// <param name="words">The words with their values; of several words for one value the first is written.</param>
public sealed class ChoiceCell<T>(params (string Word, T Value)[] words) : CellKind
    where T : notnull
{
    // A letter or a figure within a longer text says nothing.
    private const int LeastInside = 1;

    /// <summary>True where a longer text is understood that holds words of one value and of no other.</summary>
    public bool Within { get; init; }

    /// <inheritdoc/>
    public override bool IsClosed => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Choices { get; } = [.. words.DistinctBy(pair => pair.Value).Select(pair => pair.Word)];

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var typed = SearchText.Fold(text);
        var exact = words.Where(pair => SearchText.Fold(pair.Word) == typed).ToList();
        var found = exact.Count > 0 ? exact : [.. words.Where(pair => typed.Length > 0 && SearchText.Fold(pair.Word).StartsWith(typed, StringComparison.Ordinal))];
        found = found.Count == 0 && Within ? Inside(typed) : found;
        return found.Count > 0 && found.All(pair => EqualityComparer<T>.Default.Equals(pair.Value, found[0].Value))
            ? CellRead.Of(found[0].Value)
            : CellRead.Refused($"Write {Listed()}.");
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) =>
        words.First(pair => EqualityComparer<T>.Default.Equals(pair.Value, (T)value)).Word;

    // Words of a longer text, the longest first, each taken out before a shorter one is looked for: "1 colour black" holds "1 colour", and not "colour".
    private List<(string Word, T Value)> Inside(string typed)
    {
        var rest = $" {typed} ";
        var found = new List<(string Word, T Value)>();
        foreach (var pair in words.Select(pair => (Word: $" {SearchText.Fold(pair.Word)} ", pair.Value)).Where(pair => pair.Word.Length > LeastInside + 2).OrderByDescending(pair => pair.Word.Length))
        {
            if (rest.Contains(pair.Word, StringComparison.Ordinal))
            {
                found.Add(pair);
                rest = rest.Replace(pair.Word, " \n ", StringComparison.Ordinal);
            }
        }

        return found;
    }

    private string Listed() => Choices.Count == 1 ? Choices[0] : string.Join(", ", Choices.SkipLast(1)) + " or " + Choices[^1];
}

/// <summary>Something that is kept elsewhere and named here: by its name, or by its id.</summary>
/// <param name="what">What it is: <c>paper</c>.</param>
/// <param name="known">Ids with names.</param>
/// <param name="alsoKnown">Finds an id that is not kept yet but may be named; null where there is none.</param>
public sealed class ReferenceCell(string what, IReadOnlyList<(string Id, string Name)> known, Func<string, string?>? alsoKnown = null) : CellKind
{
    private readonly Dictionary<string, string> ids = known.Select(item => item.Id).Distinct().ToDictionary(id => id, StringComparer.Ordinal);
    private readonly ILookup<string, string> idsByName = known.ToLookup(item => SearchText.Fold(item.Name), item => item.Id);
    private readonly Dictionary<string, string> names = known.DistinctBy(item => item.Id).ToDictionary(item => item.Id, item => item.Name, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override IReadOnlyList<string> Choices { get; } = [.. known.Select(item => item.Name).Distinct()];

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var named = idsByName[SearchText.Fold(text)].ToList();
        if (named.Count == 1)
        {
            return CellRead.Of(named[0]);
        }

        if (ids.TryGetValue(text, out var id) || (id = alsoKnown?.Invoke(text)) is not null)
        {
            return CellRead.Of(id);
        }

        return CellRead.Refused(named.Count > 1
            ? $"Several have this name; write the id: {string.Join(" or ", named)}."
            : Meant(text) is { } meant ? $"There is no {what} of this name. Did you mean {meant}?" : $"There is no {what} of this name. Add it first, or write one that there is.");
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) =>
        names.TryGetValue((string)value, out var name) && idsByName[SearchText.Fold(name)].Take(2).Count() == 1 ? name : (string)value;

    private string? Meant(string text) => Nearest.To(text, Choices);
}

/// <summary>Several things that are kept elsewhere, in order, parted by plus signs.</summary>
/// <param name="one">One of them.</param>
public sealed class ReferenceListCell(ReferenceCell one) : CellKind
{
    private const string Parting = " + ";

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var found = new List<string>();
        foreach (var named in text.Split('+', StringSplitOptions.TrimEntries))
        {
            var read = one.Read(named, manners);
            if (read.Rule is { } rule)
            {
                return CellRead.Refused($"{named}: {rule} Part several by a plus sign, the outermost first.");
            }

            found.Add((string)read.Value!);
        }

        return CellRead.Of(found);
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) =>
        string.Join(Parting, ((IReadOnlyList<string>)value).Select(id => one.Write(id, manners)));
}
