using System.Globalization;
using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>What a shop's offers come to in a press: papers that it has not yet, and the prices of a list.</summary>
public static class Offers
{
    /// <summary>The paper that an offer is about among those that there are: of the same weight, and of its name or a name that only adds to it. Null where there is none, or are several.</summary>
    public static Stock? Known(PaperOffer offer, IReadOnlyList<Stock> papers)
    {
        var name = SearchText.Fold(offer.Paper.Name);
        var alike = papers.Where(paper => paper.Weight == offer.Paper.Weight && SearchText.Fold(paper.Name) is var own && (own == name || own.StartsWith(name + " ", StringComparison.Ordinal))).Take(2).ToList();
        return alike.Count == 1 ? alike[0] : alike.FirstOrDefault(paper => SearchText.Fold(paper.Name) == name);
    }

    /// <summary>Papers of the offers that are not there yet, each once, under a name of its own: of several weights under one name the later ones end with theirs.</summary>
    public static IReadOnlyList<Stock> Lacking(IEnumerable<PaperOffer> offers, IReadOnlyList<Stock> papers)
    {
        var all = papers.ToList();
        foreach (var offer in offers.Where(offer => Known(offer, all) is null))
        {
            var taken = all.Exists(paper => SearchText.Fold(paper.Name) == SearchText.Fold(offer.Paper.Name));
            all.Add(taken ? offer.Paper with { Name = $"{offer.Paper.Name} {NumberText.Plain(offer.Paper.Weight.Stated)}" } : offer.Paper);
        }

        return all[papers.Count..];
    }

    /// <summary>The list with the prices of the offers in place of its own for the same paper and sheet, and for the same ink and sheet.</summary>
    /// <param name="list">The list.</param>
    /// <param name="offers">The offers with their rows.</param>
    /// <param name="papers">The press's papers, those of the offers among them.</param>
    /// <param name="problem">Told where two papers would print at two prices on one sheet.</param>
    public static Shop Into(Shop list, IReadOnlyList<ReadThing<PaperOffer>> offers, IReadOnlyList<Stock> papers, Action<CellProblem> problem)
    {
        List<PaperPrice> paper =
        [
            .. offers.Select(offer => new PaperPrice(
                Known(offer.Thing, papers)?.Id ?? "", offer.Thing.SheetId, [.. offer.Thing.Steps.Select(step => new PriceStep(step.From, step.Sheet))], StepRule.AllUnits)),
        ];
        List<PrintPrice> print =
        [
            .. Print(offers, Ink.Black, step => step.Black, OfferShape.Black, problem),
            .. Print(offers, Ink.Colour, step => step.Colour, OfferShape.Colour, problem),
        ];
        return PriceListTable.WithNamedSheets(list with
        {
            Paper = [.. list.Paper.Where(old => !paper.Exists(price => price.StockId == old.StockId && price.SheetId == old.SheetId)), .. paper],
            Print = [.. list.Print.Where(old => !print.Exists(price => price.Ink == old.Ink && price.SheetId == old.SheetId)), .. print],
        });
    }

    // What printing costs hangs on the ink and the sheet: every paper of a sheet must say the same, or nothing.
    private static IEnumerable<PrintPrice> Print(
        IReadOnlyList<ReadThing<PaperOffer>> offers, Ink ink, Func<OfferStep, decimal?> priceOf, int column, Action<CellProblem> problem)
    {
        foreach (var bySheet in offers.Where(offer => offer.Thing.Steps.All(step => priceOf(step) is not null)).GroupBy(offer => offer.Thing.SheetId))
        {
            var steps = Steps(bySheet.First().Thing, priceOf);
            foreach (var other in bySheet.Skip(1).Where(other => !Steps(other.Thing, priceOf).SequenceEqual(steps)))
            {
                problem(new CellProblem(
                    other.Row,
                    column,
                    priceOf(other.Thing.Steps[0])!.Value.ToString(CultureInfo.InvariantCulture),
                    $"On {bySheet.Key} row {bySheet.First().Row} prints at another price; printing is priced by the sheet, whatever the paper. Leave this column out and bring print prices in by themselves."));
            }

            yield return new PrintPrice(ink, bySheet.Key, steps, StepRule.AllUnits);
        }
    }

    // Steps count sheets, and printing is counted by the side: n sheets printed on both sides begin at side 2n - 1. Steps at one price are one.
    private static List<PriceStep> Steps(PaperOffer offer, Func<OfferStep, decimal?> priceOf)
    {
        var steps = new List<PriceStep>();
        foreach (var step in offer.Steps.Where(step => steps.Count == 0 || priceOf(step) != steps[^1].Each))
        {
            steps.Add(new PriceStep((2 * step.From) - 1, priceOf(step)!.Value));
        }

        return steps;
    }
}
