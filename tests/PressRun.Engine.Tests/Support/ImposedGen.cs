using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Sheets;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Support;

/// <summary>Runs of every binding, up to 96 pages, in every layout, from one piece to many on a sheet, upright, turned and mixed.</summary>
internal static class ImposedGen
{
    private const int MostPages = 96;

    /// <summary>A run with its sheets.</summary>
    public sealed record Run(PreparedJob Prepared, Estimate Estimate)
    {
        public IReadOnlyList<ImposedSheet> Sheets { get; } = SheetImposer.Impose(Prepared, Estimate);

        public BookBlock Block => Prepared.Block;

        public override string ToString() =>
            $"{Prepared.Job.Edition} {string.Join(", ", Prepared.Job.Edition.Parts)} {Prepared.Job.Shop.Layout} {string.Join(", ", Prepared.Job.Shop.Sheets)}";
    }

    private static Gen<Trim> Trims(Binding binding) =>
        from cuts in JobGen.Among(0m, 2m, 3.175m).Array[4]
        select new Trim(Mm(cuts[0]), Mm(cuts[1]), Mm(cuts[2]), Mm(binding == Binding.Saddle ? 0m : cuts[3]));

    private static Gen<List<Part>> Parts(Binding binding) =>
        from counts in Gen.Int[1, 10].List[binding == Binding.Perfect ? 2 : 1, 4]
        from single in Gen.Bool
        select counts.Select((count, index) => Part(
            Math.Min(MostPages / counts.Count / BindingRules.PagesPerPiece(binding, index), binding == Binding.Perfect && index == 0 ? 1 : count) * BindingRules.PagesPerPiece(binding, index),
            $"part {index}", inside: binding == Binding.Loose && single ? Ink.None : Ink.Black)).ToList();

    /// <summary>Any run.</summary>
    public static Gen<Run> Any { get; } =
        from binding in Gen.Enum<Binding>()
        from page in Gen.Select(Gen.Int[60, 150], Gen.Int[60, 150])
        from trim in Trims(binding)
        from parts in Parts(binding)
        from bleed in Gen.Bool
        from layout in Gen.Enum<Layout>()
        from sheet in Gen.Select(Gen.Int[330, 700], Gen.Int[330, 700], Gen.Int[0, 5], Gen.Int[0, 6], Gen.Bool)
        from grain in JobGen.Among(GrainRule.Any, GrainRule.Any, GrainRule.ParallelToSpine)
        from copies in Gen.Int[1, 40]
        select Made(
            Edition(binding, [.. parts]) with { Page = MmSize(page.Item1, page.Item2), Trim = trim, Bleed = bleed },
            new Sheet("square", Mm(sheet.Item1), Mm(sheet.Item2), Mm(sheet.Item3), Mm(sheet.Item4), sheet.Item5, grain), layout, copies);

    /// <summary>A run on one sheet size.</summary>
    public static Run Made(Edition edition, Sheet sheet, Layout layout, int copies)
    {
        var prepared = Plain().WithEdition(_ => edition).With(shop => shop with { Sheets = [sheet], Layout = layout }).Prepared();
        return new Run(prepared, prepared.Estimate(copies).Value);
    }
}
