using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Bench;

/// <summary>Prints the imposition on paper that exists only here, folds it, nests it and reads it.</summary>
public sealed class FoldedBookTests
{
    // A printed page somewhere in space: where its panel lies across the spine, which way its face looks, which way its head points.
    private readonly record struct Printed(int Page, double X, double Depth, int Looks, int HeadPoints);

    [Fact]
    public void A_folded_and_nested_book_reads_from_the_first_page_to_the_last_with_every_head_up() =>
        JobGen.Saddle.Sample(job =>
        {
            var imposition = job.Prepared().Impose();
            var pages = Fold(imposition.Pieces);
            var total = job.Edition.Parts.Sum(part => part.Pages);
            Assert.Equal(Enumerable.Range(1, total), pages.Select(page => page.Page));
            Assert.All(pages, page => Assert.Equal(1, page.HeadPoints));
        });

    [Fact]
    public void Bound_leaves_read_from_the_first_page_to_the_last() =>
        JobGen.Any.Where(job => job.Edition.Binding is Binding.Side or Binding.Loose).Sample(job =>
            Assert.Equal(
                Enumerable.Range(1, job.Edition.Parts.Sum(part => part.Pages)),
                job.Prepared().Impose().Pieces.SelectMany(piece => piece.Outer.Concat(piece.Inner))));

    [Fact]
    public void A_perfect_bound_book_reads_through_its_cover() =>
        JobGen.Any.Where(job => job.Edition.Binding == Binding.Perfect).Sample(job =>
        {
            var pieces = job.Prepared().Impose().Pieces;
            var cover = pieces[0];
            var read = new[] { cover.Outer[1], cover.Inner[0] }
                .Concat(pieces.Skip(1).SelectMany(piece => piece.Outer.Concat(piece.Inner)))
                .Concat([cover.Inner[1], cover.Outer[0]]);
            Assert.Equal(Enumerable.Range(1, job.Edition.Parts.Sum(part => part.Pages)), read);
        });

    // Sheets lie on a table in order, the outermost lowest, each with its outer face down. Turning a sheet over about its upright middle line
    // keeps heads up and exchanges left and right. Then the left half is folded over onto the right half.
    private static List<Printed> Fold(IReadOnlyList<ImposedPiece> pieces)
    {
        var lying = new List<Printed>();
        for (var index = 0; index < pieces.Count; index++)
        {
            lying.Add(new Printed(pieces[index].Inner[0], -0.5, index, 1, 1));
            lying.Add(new Printed(pieces[index].Inner[1], 0.5, index, 1, 1));
            // Printed on the back as [left, right]; seen from above the left of that face lies at the right.
            lying.Add(new Printed(pieces[index].Outer[0], 0.5, index, -1, 1));
            lying.Add(new Printed(pieces[index].Outer[1], -0.5, index, -1, 1));
        }

        // Half a turn about the spine: what lay left comes to lie right, above all that lay there, in reverse order and looking the other way.
        var folded = lying.Select(page => page.X > 0
            ? page
            : page with { X = -page.X, Depth = (2 * pieces.Count) - page.Depth, Looks = -page.Looks });

        // The front cover is now on top with the spine at the left: leaves from above downwards, first the side that looks up.
        return [.. folded.OrderByDescending(page => page.Depth).ThenByDescending(page => page.Looks)];
    }
}
