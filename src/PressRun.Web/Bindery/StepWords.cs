using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>How each step is done, for somebody who has not done it before and has nothing but the sheet.</summary>
public static class StepWords
{
    // A higher stack leans, and presses its middle least (common practice, from memory).
    private static readonly Length StackHeight = Length.FromMillimetres(200m);

    /// <summary>How to do a step; empty where the press knows best.</summary>
    /// <param name="view">The run.</param>
    /// <param name="step">One of its steps.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<string> Of(BinderyView view, WorkStep step, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        return step.Kind switch
        {
            WorkKind.CutApart =>
            [
                Say($"Take the prints of one sheet at a time, told apart by the pages on their fronts. Knock them even, fronts up and turned as drawn: triangles point to the heads of the pages."),
                Say($"Cut in the order of the numbers. The edge that is named lies at the fence, behind the blade; the fence stands so far from the blade. Cut no more at once than the clamp holds firmly."),
                Say($"Lay every stack on its pile, front up, head away from you."),
            ],
            WorkKind.Score => [.. ToScore(sheet).GroupBy(pile => pile.PartIndex).Select(part => Score(view, part.First(), format))],
            WorkKind.Collate => Collate(sheet, edition),
            WorkKind.Jog => [Jog(edition)],
            WorkKind.Staple => Staple(view, step, format),
            WorkKind.Glue => Glue(view, step, format),
            WorkKind.Fold => Fold(sheet, edition),
            WorkKind.Press =>
            [
                edition.Binding == Binding.Perfect
                    ? Say($"At once, while the glue sets, lay the copies under a weighted board until the next day: stacks up to {format.Length(StackHeight)}, spines left and right in turn.")
                    : Say($"Lay the copies under a weighted board until the next day: stacks up to {format.Length(StackHeight)}, spines left and right in turn."),
            ],
            WorkKind.TrimSpine => [Say($"Trim the loose leaves at the spine now: once they are bound, a cut there would take the binding off."), .. Trim(view, step, format)],
            WorkKind.Trim => [.. Trim(view, step, format)],
            WorkKind.Pack => [Pack(view, format)],
            _ => [],
        };
    }

    // What is too heavy to be folded without a line; a press that scores where nothing is too heavy knows what for.
    private static List<Pile> ToScore(BenchSheet sheet)
    {
        var folded = sheet.Piles.Where(pile => pile.Folds.Count > 0).ToList();
        var heavy = sheet.Cautions.Where(caution => caution.Code == BenchCautionCode.FoldUnscored).Select(caution => caution.Part).ToHashSet();
        return heavy.Count == 0 ? folded : folded.FindAll(pile => heavy.Contains(pile.Part) || (pile.SecondHalf is { } other && heavy.Contains(other)));
    }

    private static string Score(BinderyView view, Pile pile, PressFormat format)
    {
        var (part, lines) = (BenchWords.Capital(Apart.Of(pile.Part.Part.Name)), Lengths(pile.Folds, format));
        if (pile.Folds.Count != 2)
        {
            return Say($"{part}, outer face up, head away from you: press a line along a ruler, {lines} from its left edge, and fold back so that the outer face stays outside; try one first.");
        }

        var press = Say($"{part}, outer face up, head away from you: press two lines along a ruler, {lines} from its left edge, and fold back so that the outer face stays outside; try one first.");
        return $"{press} {Say($"Measure a set held tight first: {format.Thickness(view.Prepared!.Block.Spine)} is reckoned, and what it has more or less moves the second line.")}";
    }

    private static string Pack(BinderyView view, PressFormat format)
    {
        var quantity = view.Sheet!.Estimate.Quantity;
        return view.Prepared!.BoundBy == BoundBy.Shop
            ? Say(quantity, $"Stop when {format.Count(quantity)} good copy is counted.", $"Stop when {format.Count(quantity)} good copies are counted.")
            : Say(quantity, $"Stop when {format.Count(quantity)} good copy is counted; more are yours to keep.", $"Stop when {format.Count(quantity)} good copies are counted; more are yours to keep.");
    }

    private static string Lengths(IEnumerable<Length> lengths, PressFormat format) => Words.Together([.. lengths.Select(length => $"{format.Length(length)}")]);

    // Sentences that follow each other in one paragraph; those that are not said are null.
    private static string Paragraph(params ReadOnlySpan<string?> sentences) => string.Join(' ', sentences.ToArray().Where(sentence => sentence is not null));

    private static IReadOnlyList<string> Collate(BenchSheet sheet, Edition edition)
    {
        var layOut = Say($"Lay the piles out in the order of their numbers, heads away from you, each turned over like a page of a book so that its inner face looks up.");
        var last = sheet.Piles[^1];
        var (first, looksUp) = edition.Binding switch
        {
            Binding.Saddle => (1, Say($"Pages {last.Inner[0]} and {last.Inner[1]} then look up.")),
            Binding.Perfect => (2, Say($"The whole turned over, page 3 looks up.")),
            _ => (1, Say($"The whole turned over, page 1 looks up.")),
        };
        return
        [
            Paragraph(layOut, first == 1 ? null : Say($"Pile 1, the covers, stays aside until the spine is glued.")),
            Paragraph(
                Say($"For each copy take one of pile {first} as it lies, and lay on it one of each next pile, to pile {last.Number}."), looksUp,
                Say($"Look through every tenth: papers and pages follow each other as drawn.")),
        ];
    }

    private static string Jog(Edition edition) => edition.Binding == Binding.Saddle
        ? Say($"Knock each set on the table, first at its head, then at one side, until all edges lie even.")
        : Say($"Knock each set on the table, first at its head, then at its spine, until all edges lie even.");

    // Whoever holds a set together for good has to know that it lies even; where knocking it up is a step of its own, it does.
    private static IEnumerable<string> EvenFirst(BenchSheet sheet, Edition edition, WorkStep step) =>
        sheet.Steps.Any(other => other.Kind == WorkKind.Jog && other.Number < step.Number) ? [] : [Jog(edition)];

    private static List<string> Staple(BinderyView view, WorkStep step, PressFormat format)
    {
        var (sheet, edition) = (view.Sheet!, view.Prepared!.Job.Edition);
        if (sheet.Imposition.StaplerStop is not { } stop)
        {
            return [];
        }

        var staples = Lengths(sheet.Imposition.StaplesFromHead, format);
        var (each, all) = (sheet.Imposition.StaplesFromHead.Count, format.Count(sheet.StaplesOf(step.Copies)));
        var count = Say(each, $"{each} staple a copy, {all} in all.", $"{each} staples a copy, {all} in all.");
        var legs = Say($"They go through {format.Thickness(sheet.UnderStaple)} of paper: take legs of {format.Length(view.Limits.LegFor(sheet.UnderStaple))} or a little more.");
        var untrimmed = sheet.Steps.Any(later => later.Kind == WorkKind.Trim && later.Number > step.Number);
        if (edition.Binding == Binding.Saddle)
        {
            var folded = Before(sheet, WorkKind.Fold, WorkKind.Staple);
            return
            [
                .. EvenFirst(sheet, edition, step),
                Paragraph(Say($"Set the stapler's stop {format.Length(stop)} behind where the staple goes in, half of the sheet's width."), legs),
                Paragraph(
                    folded ? Say($"Open the folded set, cover up, one edge at the stop.") : Say($"Turn the set over, cover up, one edge at the stop."),
                    AlongTheFold(sheet.Piles[^1].Inner, staples, untrimmed), count, Say($"Open every tenth: staples in the fold, legs flat."),
                    folded ? Say($"Then close it at its fold, and rub that down again.") : null),
            ];
        }

        return
        [
            .. EvenFirst(sheet, edition, step),
            Paragraph(
                Say($"Set the stapler's stop {format.Length(stop)} behind where the staple goes in."), legs, Say($"Lay the set with page 1 up and its spine, the left edge, at the stop.")),
            Paragraph(AlongTheSpine(staples, untrimmed), count, Say($"Look at the back of every tenth: legs flat.")),
        ];
    }

    private static string AlongTheFold(IReadOnlyList<int> middle, string staples, bool untrimmed) => untrimmed
        ? Say($"Staple along the fold, middles of the staples at {staples} from the head as it lies now, before it is trimmed; the legs close in the middle of the book, between pages {middle[0]} and {middle[1]}.")
        : Say($"Staple along the fold, middles of the staples at {staples} from the head; the legs close in the middle of the book, between pages {middle[0]} and {middle[1]}.");

    private static string AlongTheSpine(string staples, bool untrimmed) => untrimmed
        ? Say($"Staple along the spine, middles of the staples at {staples} from the head as it lies now, before it is trimmed, through all leaves; the legs close behind the last page.")
        : Say($"Staple along the spine, middles of the staples at {staples} from the head, through all leaves; the legs close behind the last page.");

    private static List<string> Glue(BinderyView view, WorkStep step, PressFormat format)
    {
        var cover = view.Sheet!.Piles[0];
        return cover.Folds.Count == 2
            ?
            [
                .. FoldedCover(view, cover, format),
                .. EvenFirst(view.Sheet, view.Prepared!.Job.Edition, step),
                Say($"Clamp each set between boards, its spine, the left edge of page 3, up, even, and a few millimetres clear of them; it is {format.Thickness(view.Prepared.Block.Spine)} thick. Roughen the spine with coarse sandpaper or a fine saw, so that glue gets between the leaves, and brush the dust off."),
                Say($"Brush or roll glue on the spine only, thin and even from head to foot, and let it take as its maker says. Then open the clamp, hold the set shut, and stand its spine between the two folds of a cover that lies inner face up, heads level: page 3 faces page 2. Close the cover and press the spine down."),
                Say($"Cut nothing before the glue is hard. Then pull at a leaf in the middle of the first copy: it holds."),
            ]
            : [];
    }

    // Folded where it is scored, or creased by the shop; else along a ruler.
    private static IEnumerable<string> FoldedCover(BinderyView view, Pile cover, PressFormat format)
    {
        if (view.Sheet!.Steps.Any(step => step.Kind == WorkKind.Score))
        {
            return [];
        }

        var (first, second) = (format.Length(cover.Folds[0]), format.Length(cover.Folds[1]));
        return
        [
            Work.SoldBy(view.Prepared!.Job.Shop).Contains(WorkKind.Score)
                ? Say($"The covers come creased from the shop. Before the glue is opened fold them at {first} and {second} from the left edge of the outer face, back so that it stays outside.")
                : Say($"Before the glue is opened fold the covers along a ruler at {first} and {second} from the left edge of the outer face, back so that it stays outside."),
        ];
    }

    private static List<string> Fold(BenchSheet sheet, Edition edition)
    {
        if (edition.Binding != Binding.Saddle)
        {
            return [];
        }

        var (first, middle) = (sheet.Piles[0].Outer, sheet.Piles[^1].Inner);
        return [Say($"Fold the set along its middle with pages {middle[0]} and {middle[1]} inside, so that page 1 lies in front and page {first[0]} behind. Rub the fold down from its middle to both ends.")];
    }

    private static bool Before(BenchSheet sheet, WorkKind first, WorkKind then) =>
        sheet.Steps.FirstOrDefault(step => step.Kind == first) is { } one && sheet.Steps.First(step => step.Kind == then).Number > one.Number;

    private static IEnumerable<string> Trim(BinderyView view, WorkStep step, PressFormat format)
    {
        if (!BenchWords.CutsOf(view, step.Kind).Any())
        {
            yield break;
        }

        var pile = view.Prepared!.StepsAtTable.FirstOrDefault(rated => rated.Name == step.Name) is { CopiesPerPile: > 1 } rated
            ? Say($"Cut {format.Count(rated.CopiesPerPile)} copies at once.")
            : Say($"Cut no more at once than the clamp holds firmly.");
        yield return Paragraph(
            Say($"Page 1 up. For each cut one edge lies at the fence, behind the blade, and the fence stands so far from the blade; what falls off lies on your side."), pile,
            Say($"Cut all copies before the fence is moved; measure the first after each move."));
    }
}
