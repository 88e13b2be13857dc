using PressRun.Engine.Costing;

namespace PressRun.Engine.Editions;

/// <summary>Which page counts a binding takes.</summary>
public static class BindingRules
{
    /// <summary>Pages of the wrap-round cover of a perfect-bound book.</summary>
    public const int PerfectCoverPages = 4;

    /// <summary>The number that a part's pages must be a multiple of.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="partIndex">Place of the part from the outside in, from 0.</param>
    public static int PagesPerPiece(Binding binding, int partIndex) => binding switch
    {
        Binding.Saddle => 4,
        Binding.Side => 2,
        Binding.Perfect => partIndex == 0 ? PerfectCoverPages : 2,
        _ => 1,
    };

    /// <summary>Whether a part may have that many pages.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="partIndex">Place of the part from the outside in, from 0.</param>
    /// <param name="pages">Any number of pages.</param>
    public static bool Allows(Binding binding, int partIndex, int pages) =>
        pages > 0
        && pages % PagesPerPiece(binding, partIndex) == 0
        && (binding != Binding.Perfect || partIndex > 0 || pages == PerfectCoverPages);

    /// <summary>The nearest page counts that a part may have, below and above: one where only one exists.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="partIndex">Place of the part from the outside in, from 0.</param>
    /// <param name="pages">Any number of pages.</param>
    /// <returns>The lower first, each 1 or more.</returns>
    public static IReadOnlyList<int> Nearest(Binding binding, int partIndex, int pages)
    {
        if (binding == Binding.Perfect && partIndex == 0)
        {
            return [PerfectCoverPages];
        }

        var unit = PagesPerPiece(binding, partIndex);
        var below = pages <= 0 ? 0 : (pages - 1) / unit * unit;
        var above = below + unit;
        return below == 0 ? [above, above + unit] : [below, above];
    }

    /// <summary>Everything about the parts that the binding does not take.</summary>
    internal static void Check(Edition edition, List<Problem> problems)
    {
        if (edition.Parts.Count == 0)
        {
            problems.Add(new Problem("$.edition.parts", null, "An edition has at least one part."));
            return;
        }

        if (edition.Binding == Binding.Perfect && edition.Parts.Count < 2)
        {
            problems.Add(new Problem(
                "$.edition.parts", null, "A perfect-bound edition has a cover as its first part and at least one part inside it."));
        }

        if (edition.Binding == Binding.Saddle && edition.Trim.Spine.Millimetres != 0m)
        {
            problems.Add(new Problem("$.edition.trim.spine", Text.Mm(edition.Trim.Spine), "Folded sheets have no spine trim; it must be 0."));
        }

        var total = 0L;
        for (var index = 0; index < edition.Parts.Count; index++)
        {
            var part = edition.Parts[index];
            total += part.Pages;
            if (!Allows(edition.Binding, index, part.Pages))
            {
                problems.Add(new Problem($"$.edition.parts[{index}].pages", Text.Of(part.Pages), PageRule(edition.Binding, index, part)));
            }
        }

        if (total > Job.MostPages)
        {
            problems.Add(new Problem("$.edition.parts", Text.Of(total), $"All parts together have at most {Job.MostPages} pages."));
        }
    }

    private static string PageRule(Binding binding, int index, Part part)
    {
        var nearest = string.Join(" or ", Nearest(binding, index, part.Pages).Select(count => Text.Of(count)));
        return binding switch
        {
            Binding.Saddle => $"Folded and stapled parts take a multiple of 4 pages; the nearest are {nearest}.",
            Binding.Perfect when index == 0 => $"The cover of a perfect-bound book has {nearest} pages.",
            Binding.Loose => "A part has at least 1 page.",
            _ => $"Leaves take a multiple of 2 pages; the nearest are {nearest}.",
        };
    }
}
