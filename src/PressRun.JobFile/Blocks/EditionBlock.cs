using System.Globalization;
using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads an edition.</summary>
public static class EditionBlock
{
    private const string PageRule = "Write the finished page as { \"width\", \"height\" }.";
    private const string TrimRule = "Write what is cut off as { \"head\", \"foot\", \"foreEdge\", \"spine\" }.";
    private const string PartsRule = "Write parts, from the outside in, as a list of at least one { \"name\", \"pages\", \"stock\", \"outside\", \"inside\" }.";
    private const string WeighedRule = "Write what was weighed as { \"mass\", \"thickness\" }.";
    private const string FixedRule = "Write fixed costs as a list of { \"name\", \"amount\" }.";

    private const int MostParts = 200;

    private static readonly Part NoPart = new(string.Empty, 0, string.Empty, Ink.None, Ink.None);

    /// <summary>Reads the job file's own edition: what <see cref="Read"/> reads, with title and printing, and nothing else.</summary>
    public static Edition ReadWithTitle(JsonBlock block, IReadOnlySet<string>? stockIds)
    {
        var title = block.Text("title", Need.May, JobRules.Name) ?? string.Empty;
        var printing = block.Count("printing", JobRules.Printing) ?? 1;
        var edition = Read(block, title, printing, stockIds);
        block.Close();
        return edition;
    }

    /// <summary>Reads page, binding, bleed, trim, fold, weighed, parts and fixedCosts out of an open block, which may hold more and is
    /// closed by the caller.</summary>
    /// <param name="block">The block.</param>
    /// <param name="title">Title of the edition.</param>
    /// <param name="printing">Which printing, from 1.</param>
    /// <param name="stockIds">Ids that parts may refer to; null where that cannot be told.</param>
    /// <returns>Whole only where no problem was noted.</returns>
    public static Edition Read(JsonBlock block, string title, int printing, IReadOnlySet<string>? stockIds)
    {
        var page = ReadPage(block);
        var binding = block.Choice("binding", JobWords.Bindings, Need.Must) ?? default;
        var bleed = block.Flag("bleed") ?? false;
        var trim = ReadTrim(block);
        var parts = ReadParts(block, stockIds);
        var fold = block.Choice("fold", JobWords.Folds) ?? FoldShape.Flat;
        var weighed = ReadWeighed(block);
        var costs = block.List("fixedCosts", Need.May, FixedRule, (element, path) => ReadFixedCost(element, path, block.Problems), JobRules.MostEntries);
        return new Edition(title, printing, page, binding, bleed, trim, parts, fold, weighed, costs);
    }

    private static Size ReadPage(JsonBlock edition)
    {
        if (edition.Block("page", Need.Must, PageRule) is not { } block)
        {
            return default;
        }

        var page = new Size(
            block.Length("width", JobRules.Side, Need.Must) ?? default,
            block.Length("height", JobRules.Side, Need.Must) ?? default);
        block.Close();
        return page;
    }

    private static Trim ReadTrim(JsonBlock edition)
    {
        if (edition.Block("trim", Need.May, TrimRule) is not { } block)
        {
            return default;
        }

        var trim = new Trim(Edge("head"), Edge("foot"), Edge("foreEdge"), Edge("spine"));
        block.Close();
        return trim;

        Length Edge(string name) => block.Length(name, JobRules.Allowance) ?? default;
    }

    private static List<Part> ReadParts(JsonBlock edition, IReadOnlySet<string>? stockIds)
    {
        var parts = new List<Part>();
        var pages = 0L;
        foreach (var (element, path) in edition.Items("parts", Need.Must, PartsRule, atLeastOne: true, most: MostParts))
        {
            // What is no object still counts, so that the others keep their places.
            parts.Add(JsonBlock.Open(element, path, edition.Problems, PartsRule) is { } block ? ReadPart(block, stockIds) : NoPart);
            pages += parts[^1].Pages;
        }

        if (pages > Job.MostPages)
        {
            var sum = pages.ToString(CultureInfo.InvariantCulture);
            edition.Problems.Add(edition.Path.Member("parts"), sum + " pages", "All parts together have at most 10,000 pages.");
        }

        return parts;
    }

    private static Part ReadPart(JsonBlock block, IReadOnlySet<string>? stockIds)
    {
        var name = block.Text("name", Need.May, JobRules.Name) ?? string.Empty;
        var pages = block.Count("pages", JobRules.Pages, Need.Must) ?? 0;
        var stock = block.Text("stock", Need.Must, JobRules.Id);
        Keys.CheckKnown(stock, stockIds, block.Path.Member("stock"), "stock", block.Problems);
        var outside = block.Choice("outside", JobWords.Inks) ?? Ink.None;
        var inside = block.Choice("inside", JobWords.Inks) ?? Ink.None;
        var sheet = block.Text("sheet", Need.May, JobRules.Id);
        block.Close();
        return new Part(name, pages, stock ?? string.Empty, outside, inside, sheet);
    }

    private static Weighed? ReadWeighed(JsonBlock edition)
    {
        if (edition.Block("weighed", Need.May, WeighedRule) is not { } block)
        {
            return null;
        }

        var mass = block.Mass("mass", JobRules.MassAboveNone);
        var thickness = block.Length("thickness", JobRules.Thickness);
        block.Close();
        return mass is null && thickness is null ? null : new Weighed(mass, thickness);
    }

    private static FixedCost? ReadFixedCost(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, FixedRule) is not { } block)
        {
            return null;
        }

        var cost = new FixedCost(
            block.Text("name", Need.May, JobRules.Name) ?? string.Empty,
            block.Number("amount", JobRules.Amount) ?? 0m);
        block.Close();
        return cost;
    }
}
