using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries.Files;

/// <summary>The notes of a file, the terms of the shop that they state, and which of them a person agreed to. None is taken before.</summary>
public sealed class TermChoice
{
    private readonly HashSet<(int Row, Type What)> agreed = [];

    /// <summary>The terms, in the order of the notes.</summary>
    public IReadOnlyList<NotedTerm> Terms { get; private set; } = [];

    /// <summary>The day from which the prices hold, which says which list they come into; null where no note names one.</summary>
    public NotedDay? Day { get; private set; }

    /// <summary>Notes that state no term known here.</summary>
    public IReadOnlyList<NoteLine> Others { get; private set; } = [];

    /// <summary>Looks at the notes, again where the file is read in another way; what was agreed to stays so.</summary>
    public void Look(FileNotes notes, CellManners manners)
    {
        var terms = NoteTerms.Of(notes.Lines, manners);
        Day = terms.OfType<NotedDay>().FirstOrDefault();
        Terms = [.. terms.Where(term => term is not NotedDay)];
        Others = [.. notes.Lines.Where(line => NoteTerms.Of([line], manners).Count == 0)];
    }

    /// <summary>True where a person agreed to a term.</summary>
    public bool IsAgreed(NotedTerm term) => agreed.Contains(Of(term));

    /// <summary>Agrees to a term, or no more.</summary>
    public void Agree(NotedTerm term, bool agree) => _ = agree ? agreed.Add(Of(term)) : agreed.Remove(Of(term));

    /// <summary>What comes into a list: the terms agreed to that it can hold.</summary>
    public IReadOnlyList<NotedTerm> Taken(Shop list) => [.. Terms.Where(term => IsAgreed(term) && term.Fits(list))];

    private static (int Row, Type What) Of(NotedTerm term) => (term.Line.Row, term.GetType());
}
