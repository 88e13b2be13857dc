using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>A paper that prints at other prices than most papers of its sheet.</summary>
/// <param name="Row">Its first row.</param>
/// <param name="Paper">Its name.</param>
/// <param name="LikeRow">First row of those that print as most do.</param>
/// <param name="Sheet">The sheet that it comes on.</param>
public sealed record PaperApart(int Row, string Paper, int LikeRow, string Sheet);

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

    /// <summary>The list with the prices of the offers in place of its own for the same paper and sheet, and for the same ink and sheet. Papers that print at other prices than most come on a
    /// sheet of their own.</summary>
    /// <param name="list">The list.</param>
    /// <param name="offers">The offers with their rows.</param>
    /// <param name="papers">The press's papers, those of the offers among them.</param>
    /// <param name="apart">Told of each paper that comes on a sheet of its own.</param>
    public static Shop Into(Shop list, IReadOnlyList<ReadThing<PaperOffer>> offers, IReadOnlyList<Stock> papers, Action<PaperApart> apart)
    {
        var printed = OfferSheets.Of(offers);
        foreach (var other in printed.Where(sheet => sheet.IsApart).SelectMany(sheet => sheet.Offers.Select(offer => new PaperApart(offer.Row, offer.Thing.Paper.Name, sheet.LikeRow, sheet.Id))))
        {
            apart(other);
        }

        List<(string Base, PaperPrice Price)> paper =
        [
            .. from sheet in printed
               from offer in sheet.Offers
               orderby offer.Row
               select (sheet.Base, new PaperPrice(
                   Known(offer.Thing, papers)?.Id ?? "", sheet.Id, [.. offer.Thing.Steps.Select(step => new PriceStep(step.From, step.Sheet))], StepRule.AllUnits)),
        ];
        var print = printed.SelectMany(sheet => sheet.Prints()).ToList();
        var added = printed.Where(sheet => sheet.IsApart && !list.Sheets.Any(known => known.Id == sheet.Id)).Select(sheet => sheet.Twin(list)).OfType<Sheet>();
        return PriceListTable.WithNamedSheets(list with
        {
            Sheets = [.. list.Sheets, .. added],
            Paper = [.. list.Paper.Where(old => !paper.Exists(come => come.Price.StockId == old.StockId && OfferSheets.IsOf(old.SheetId, come.Base))), .. paper.Select(come => come.Price)],
            Print = [.. list.Print.Where(old => !print.Exists(price => price.Ink == old.Ink && price.SheetId == old.SheetId)), .. print],
        });
    }
}
