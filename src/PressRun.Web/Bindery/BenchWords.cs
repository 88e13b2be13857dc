using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>The words of the work at the table, for somebody who has not done it before.</summary>
public static class BenchWords
{
    // How exactly a cut can be made at a table (common practice, from memory).
    private static readonly Length CutWithin = Length.FromMillimetres(1m);

    // Two leaves of the thinnest book papers: less is not seen at a fore-edge (our choice).
    private static readonly Length LeastSeen = Length.FromMillimetres(0.2m);

    /// <summary>What an edge is called.</summary>
    public static string Of(Edge edge) => edge switch
    {
        Edge.Spine => Say("edge of a book", $"spine"),
        Edge.Head => Say("edge of a book", $"head"),
        Edge.ForeEdge => Say("edge of a book", $"fore-edge"),
        _ => Say("edge of a book", $"foot"),
    };

    /// <summary>What a step is called: by the press's own name where it has one, beside the trade's where that is another.</summary>
    public static string TitleOf(WorkStep step)
    {
        var trade = Capital(Words.Of(step.Kind));
        return step.Name is not { } name || trade.Equals(name, StringComparison.OrdinalIgnoreCase) ? trade
            : step.Kind == WorkKind.Other ? Capital(Apart.Of(name))
            : $"{trade} ({Apart.Of(name)})";
    }

    /// <summary>The cuts of a step, each with its number over the whole book: a spine comes off loose leaves before they are bound, or with the others where nothing is.</summary>
    /// <param name="view">The run.</param>
    /// <param name="kind">Trimming, or trimming the spine; no other work cuts the book.</param>
    public static IEnumerable<(int Number, Cut Cut)> CutsOf(BinderyView view, WorkKind kind)
    {
        var loose = view.Prepared!.Job.Edition.Binding == Binding.Loose;
        return view.Sheet!.Imposition.Cuts.Index().Where(cut => kind switch
        {
            WorkKind.Trim => loose || cut.Item.Edge != Edge.Spine,
            WorkKind.TrimSpine => cut.Item.Edge == Edge.Spine,
            _ => false,
        }).Select(cut => (cut.Index + 1, cut.Item));
    }

    /// <summary>What lies against the fence: the edge across from the one that falls, since what stays lies between fence and blade.</summary>
    public static string Against(Edge edge) => Of(edge switch { Edge.Spine => Edge.ForeEdge, Edge.Head => Edge.Foot, Edge.ForeEdge => Edge.Spine, _ => Edge.Head });

    /// <summary>Over the pieces of a copy where nobody lays them together at the table.</summary>
    public static string PiecesOfACopy(BinderyView view) =>
        view.Prepared!.Job.Edition.Binding == Binding.Saddle ? Say($"A copy, from its outermost piece to its innermost") : Say($"A copy, from its first piece to its last");

    /// <summary>True where copies are laid together from piles here; else what they are laid together from are called pieces.</summary>
    public static bool HasPiles(BinderyView view) => view.Sheet!.Steps.Any(step => step.Kind == WorkKind.Collate);

    /// <summary>How many pieces of a pile there are, and of what size, where not all piles are of one.</summary>
    public static string Pieces(BinderyView view, Pile pile, PressFormat format)
    {
        var pieces = Say(pile.Pieces, $"{format.Count(pile.Pieces)} piece", $"{format.Count(pile.Pieces)} pieces");
        return view.Sheet!.Piles.All(other => other.Part.Piece == pile.Part.Piece) ? pieces : $"{pieces}, {format.Size(pile.Part.Piece)}";
    }

    /// <summary>What is done with the first copy.</summary>
    public static string FirstOne(BinderyView view) => view.Prepared!.BoundBy == BoundBy.Shop
        ? Say($"Look at one copy of the delivery, and at some from the middle of each carton, before you take it in.")
        : Say($"Take one copy through all steps, then look at it; make the others when all of this holds.");

    /// <summary>What to look at on the first copy, before the others are made.</summary>
    public static IReadOnlyList<string> FirstCopy(BinderyView view, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        var lines = new List<string> { Say($"Turn every leaf: pages 1 to {format.Count(sheet.Book.Pages)} follow each other, none twice, none on its head.") };
        if (edition.Binding == Binding.Saddle)
        {
            var middle = sheet.Piles[^1].Inner;
            lines.Add(Say($"It opens in its middle at pages {middle[0]} and {middle[1]}, the staples stand in the fold, and their legs lie flat there."));
        }

        // Copies that the shop binds come bound.
        if (view.Prepared!.BoundBy != BoundBy.Shop || edition.Binding == Binding.Loose)
        {
            lines.Add(Say($"Before it is bound, a leaf held against the light: both sides lie on each other within {format.Length(CutWithin)}."));
        }

        lines.Add($"{Measures(view, format)} {Weighs(view, format)}");
        return lines;
    }

    private static string Measures(BinderyView view, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        var (size, within, creep) = (format.Size(edition.Page), format.Length(CutWithin), HalvesWords.Creep(sheet.Estimate, format));
        var standsOut = edition.Binding == Binding.Saddle && edition.Trim.ForeEdge == Length.Zero && sheet.Estimate.MostCreep >= LeastSeen;
        var cut = sheet.Steps.Any(step => CutsOf(view, step.Kind).Any());
        return (cut, standsOut) switch
        {
            (true, true) =>
                Say($"It measures {size} after the last cut, give or take {within} at its cover; the innermost leaves stand out by {creep}."),
            (true, false) => Say($"It measures {size} after the last cut, give or take {within}."),
            (false, true) => Say($"It measures {size}, give or take {within} at its cover; the innermost leaves stand out by {creep}."),
            _ => Say($"It measures {size}, give or take {within}."),
        };
    }

    private static string Weighs(BinderyView view, PressFormat format)
    {
        var copy = view.Sheet!.Estimate.Copy;
        var (mass, thick) = (format.Mass(copy.Mass), format.Thickness(copy.Thickness));
        var known = view.Prepared!.Job.Edition.Weighed is { Mass: not null, Thickness: not null };
        if (view.Sheet.Estimate.SecondHalf is not { Copy: var half })
        {
            return known
                ? Say($"It weighs about {mass} and is about {thick} thick, as one was weighed and gauged.")
                : Say($"It weighs about {mass} and is about {thick} thick.");
        }

        var (other, otherThick) = (format.Mass(half.Mass), format.Thickness(half.Thickness));
        return known
            ? Say($"It weighs about {mass} and is about {thick} thick, as one was weighed and gauged; one of the second half {other} and {otherThick}.")
            : Say($"It weighs about {mass} and is about {thick} thick; one of the second half {other} and {otherThick}.");
    }

    /// <summary>A cut that parts sheets.</summary>
    public static string Of(ApartCut cut, PressFormat format)
    {
        var how = cut.Against switch
        {
            FenceSide.Left => Say($"left edge at the fence"),
            FenceSide.Top => Say($"upper edge at the fence"),
            FenceSide.Right => Say($"turn round, right edge at the fence"),
            _ => Say($"turn round, lower edge at the fence"),
        };
        return cut.Strips == 1 ? how : Say($"each of the {format.Count(cut.Strips)} strips: {how}");
    }

    /// <summary>Which sheets, such as <c>sheets 2 to 5</c>.</summary>
    public static string Sheets(IReadOnlyList<int> numbers) => numbers.Count == 1
        ? Say($"sheet {numbers[0]}")
        : numbers[^1] - numbers[0] == numbers.Count - 1 ? Say($"sheets {numbers[0]} to {numbers[^1]}") : Say($"sheets {string.Join(", ", numbers)}");

    /// <summary>Of the sheets that are not listed.</summary>
    public static string OtherSheets(int sheets, PressFormat format) =>
        Say(sheets, $"The other {format.Count(sheets)} sheet goes on in the same way.", $"The other {format.Count(sheets)} sheets go on in the same way.");

    /// <summary>Where the stacks of a sheet go.</summary>
    public static string Stacks(ImposedSheet sheet)
    {
        var used = sheet.Stacks.Where(stack => stack.Pile is not null).ToList();
        var blank = sheet.Stacks.Where(stack => stack.Pile is null).Select(stack => stack.Place.Letter).ToList();
        var goes = used.Select(stack => stack.Pile).Distinct().Count() == 1
            ? used.Count == 1 ? To(used[0]) : Say($"all {used.Count} stacks to pile {used[0].Pile}")
            : string.Join(", ", used.Select(To));
        return blank.Count == 0 ? goes : Say($"{goes}; {string.Join(", ", blank)} blank");
    }

    /// <summary>Where a stack goes: <c>A to pile 3</c>.</summary>
    public static string To(Stack stack) => Say($"{stack.Place.Letter} to pile {stack.Pile}");

    /// <summary>By which pages a sheet is known, as they stand on its front.</summary>
    public static string FrontShows(ImposedSheet sheet)
    {
        var places = sheet.Stacks.Where(stack => stack.Pile is not null)
            .Select(stack => (stack.Place.Letter, Pages: PileWords.Pages([.. sheet.Front.Pages.Where(page => page.Letter == stack.Place.Letter).Select(page => page.Page)]))).ToList();
        return places.Select(place => place.Pages).Distinct().Count() == 1
            ? places.Count switch
            {
                1 => places[0].Pages,
                2 => Say($"{places[0].Pages}, twice"),
                _ => Say($"{places[0].Pages}, {places.Count} times"),
            }
            : string.Join(", ", places.Select(place => $"{place.Letter} {place.Pages}"));
    }

    /// <summary>With a capital.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
