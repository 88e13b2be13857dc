using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>The words of the work at the table, for somebody who has not done it before.</summary>
public static class BenchWords
{
    /// <summary>What an edge is called.</summary>
    public static string Of(Edge edge) => edge switch
    {
        Edge.Spine => "spine",
        Edge.Head => "head",
        Edge.ForeEdge => "fore-edge",
        _ => "foot",
    };

    /// <summary>What a step is called: by the press's own name where it has one, beside the trade's where that is another.</summary>
    public static string TitleOf(WorkStep step)
    {
        var trade = Capital(Words.Of(step.Kind));
        return step.Name is not { } name || trade.Equals(name, StringComparison.OrdinalIgnoreCase) ? trade
            : step.Kind == WorkKind.Other ? Capital(Apart.Of(name))
            : $"{trade} ({Apart.Of(name)})";
    }

    /// <summary>How to do a step; empty where the press knows best.</summary>
    /// <param name="view">The run.</param>
    /// <param name="step">One of its steps.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<string> Lines(BinderyView view, WorkStep step, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        return step.Kind switch
        {
            WorkKind.CutApart => ["Take a stack of sheets with their fronts up and the upper edge of the drawing away from you. Cut in the order of the numbers, with what is named against the fence, and lay each piece on its pile."],
            WorkKind.Score => [.. sheet.Piles.Where(pile => pile.Folds.Count > 0).GroupBy(pile => pile.PartIndex).Select(part => Score(part.First(), format))],
            WorkKind.Collate => Collate(sheet, edition),
            WorkKind.Jog => ["Knock each set on the table, first at its head, then at its spine, until all edges lie even."],
            WorkKind.Staple => Staple(sheet, edition, format),
            WorkKind.Glue => Glue(view, format),
            WorkKind.Fold => Fold(sheet, edition),
            WorkKind.Press => ["Lay the copies under a board with weight on it, spines to the left and to the right in turn, until the next day."],
            WorkKind.TrimSpine => ["Trim the loose leaves at the spine now: once they are bound, a cut there would take the binding off.", .. Pile(view, step, format)],
            WorkKind.Trim => [.. Pile(view, step, format)],
            WorkKind.Pack => [$"Count: {Words.Many(format.Count(sheet.Estimate.Quantity), sheet.Estimate.Quantity, "good copy is", "good copies are")} wanted."],
            _ => [],
        };
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
    public static string Against(Edge edge) => edge switch { Edge.Spine => "fore-edge", Edge.Head => "foot", Edge.ForeEdge => "spine", _ => "head" };

    /// <summary>What to look at on the first copy, before the others are made.</summary>
    public static IReadOnlyList<string> FirstCopy(BinderyView view, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        var lines = new List<string> { $"Turn every leaf: pages 1 to {format.Count(sheet.Book.Pages)} follow each other, none twice, none on its head." };
        if (edition.Binding == Binding.Saddle)
        {
            var middle = sheet.Piles[^1].Inner;
            lines.Add($"It opens in its middle at pages {middle[0]} and {middle[1]}, and the staples' legs lie flat there.");
        }

        lines.Add("Held against the light, both sides of a leaf lie on each other.");
        lines.Add($"It measures {format.Size(edition.Page)}{(sheet.Imposition.Cuts.Count > 0 ? " after the last cut" : "")}, weighs about {format.Mass(sheet.Estimate.Copy.Mass)} and is about {format.Thickness(sheet.Estimate.Copy.Thickness)} thick.");
        return lines;
    }

    /// <summary>What can hurt, and how not to be.</summary>
    public static IReadOnlyList<string> Dangers(BinderyView view)
    {
        var kinds = view.Sheet!.Steps.Select(step => step.Kind).ToHashSet();
        var lines = new List<string>();
        if (kinds.Overlaps([WorkKind.CutApart, WorkKind.Trim, WorkKind.TrimSpine]))
        {
            lines.Add("Cutter: one person at a time, the guard in its place, both hands away from the blade and the clamp before it moves; never reach under a raised blade. Change blades only as the maker's manual says, in their holder, and throw none away loose.");
        }

        if (kinds.Contains(WorkKind.Staple))
        {
            lines.Add("Stapler: wear eye protection while stapling and when staples are pulled; keep fingers clear of the head and of open legs; unplug or lock it before you clear a jam.");
        }

        if (kinds.Contains(WorkKind.Glue))
        {
            lines.Add("Glue: air the room; hot glue burns, and each glue's own sheet says what it asks for.");
        }

        if (lines.Count > 0)
        {
            lines.Add("The makers' instructions and your local safety rules go before this sheet.");
        }

        return lines;
    }

    /// <summary>A cut that parts sheets.</summary>
    public static string Of(ApartCut cut, PressFormat format)
    {
        var (side, fresh) = cut.Against switch
        {
            FenceSide.Left => ("left edge", false),
            FenceSide.Top => ("upper edge", false),
            FenceSide.Right => ("right edge", true),
            _ => ("lower edge", true),
        };
        var strips = cut.Strips == 1 ? "" : $"each of the {format.Count(cut.Strips)} strips: ";
        return $"{strips}{(fresh ? "turn round, " : "")}{side} at the fence";
    }

    /// <summary>Which sheets, such as <c>sheets 2 to 5</c>.</summary>
    public static string Sheets(IReadOnlyList<int> numbers) => numbers.Count == 1
        ? $"sheet {numbers[0]}"
        : numbers[^1] - numbers[0] == numbers.Count - 1 ? $"sheets {numbers[0]} to {numbers[^1]}" : $"sheets {string.Join(", ", numbers)}";

    /// <summary>Where the stacks of a sheet go.</summary>
    public static string Stacks(ImposedSheet sheet)
    {
        var used = sheet.Stacks.Where(stack => stack.Pile is not null).ToList();
        var blank = sheet.Stacks.Where(stack => stack.Pile is null).Select(stack => stack.Place.Letter).ToList();
        var goes = used.Select(stack => stack.Pile).Distinct().Count() == 1
            ? $"{(used.Count == 1 ? used[0].Place.Letter : $"all {used.Count} stacks")} to pile {used[0].Pile}"
            : string.Join(", ", used.Select(stack => $"{stack.Place.Letter} to pile {stack.Pile}"));
        return blank.Count == 0 ? goes : $"{goes}; {string.Join(", ", blank)} blank";
    }

    private static string Score(Pile pile, PressFormat format) =>
        $"{Capital(Apart.Of(pile.Part.Part.Name))}: press the line {string.Join(" and ", pile.Folds.Select(fold => $"{format.Length(fold)}"))} from its left edge, on the side that will be outside the fold's ridge; try one first.";

    private static IReadOnlyList<string> Collate(BenchSheet sheet, Edition edition)
    {
        var last = sheet.Piles[^1];
        return edition.Binding switch
        {
            Binding.Saddle =>
            [
                "Lay the piles out in the order of their numbers, marks away from you.",
                $"Take one of pile 1 and lay it with its outer face down; lay one of each next pile on it in the same way, to pile {last.Number}. Pages {last.Inner[0]} and {last.Inner[1]} then look up.",
            ],
            Binding.Perfect =>
            [
                "Pile 1, the covers, stays aside.",
                $"Take one of pile 2 with its front down, and lay one of each next pile on it in the same way, to pile {last.Number}. Turned over, page 3 looks up.",
            ],
            _ => [$"Take one of pile 1 with its front down, and lay one of each next pile on it in the same way, to pile {last.Number}. Turned over, page 1 looks up."],
        };
    }

    private static List<string> Staple(BenchSheet sheet, Edition edition, PressFormat format)
    {
        if (sheet.Imposition.StaplerStop is not { } stop)
        {
            return [];
        }

        var staples = string.Join(" and ", sheet.Imposition.StaplesFromHead.Select(at => $"{format.Length(at)}"));
        return edition.Binding == Binding.Saddle
            ?
            [
                $"Set the stapler's stop at {format.Length(stop)}: half of the sheet's width, so that the staples stand in the fold.",
                $"{(Before(sheet, WorkKind.Fold, WorkKind.Staple) ? "Open the folded set" : "Turn the set over")}, cover up. Staple at {staples} from the head; the legs close in the middle of the book.",
            ]
            : [$"Set the stop at {format.Length(stop)} from the spine. Staple at {staples} from the head, through all leaves."];
    }

    private static List<string> Glue(BinderyView view, PressFormat format)
    {
        var cover = view.Sheet!.Piles[0];
        return cover.Folds.Count == 2
            ?
            [
                $"Clamp the leaves with the spine up and even; it is {format.Thickness(view.Prepared!.Block.Spine)} thick. Brush or roll the glue on and let it take as its maker says.",
                $"Fold the cover at {format.Length(cover.Folds[0])} and {format.Length(cover.Folds[1])} from the left edge of its outer face, lay the block in it with page 3 behind page 2, and press the spine.",
            ]
            : [];
    }

    private static List<string> Fold(BenchSheet sheet, Edition edition)
    {
        if (edition.Binding != Binding.Saddle)
        {
            return [];
        }

        var (first, middle) = (sheet.Piles[0].Outer, sheet.Piles[^1].Inner);
        return [$"Fold the set along its middle with pages {middle[0]} and {middle[1]} inside, so that page 1 lies in front and page {first[0]} behind. Rub the fold down from its middle to both ends."];
    }

    private static bool Before(BenchSheet sheet, WorkKind first, WorkKind then) =>
        sheet.Steps.FirstOrDefault(step => step.Kind == first) is { } one && sheet.Steps.First(step => step.Kind == then).Number > one.Number;

    private static IEnumerable<string> Pile(BinderyView view, WorkStep step, PressFormat format) =>
        view.Prepared!.StepsAtTable.FirstOrDefault(rated => rated.Name == step.Name) is { CopiesPerPile: > 1 } rated
            ? [$"Cut {format.Count(rated.CopiesPerPile)} copies at once."]
            : [];

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
