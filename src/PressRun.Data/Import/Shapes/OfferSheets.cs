using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>Offers on one sheet that print at the same prices. A list prices printing by ink and sheet; where papers of one sheet differ in it, those that differ from most have a sheet of the same
/// size under a name of its own, which is exact but for steps that the shop counts over all papers.</summary>
internal sealed class OfferSheets
{
    private const string Opening = " (";
    private const int MostName = 60;

    private readonly (IReadOnlyList<PriceStep>? Black, IReadOnlyList<PriceStep>? Colour) prices;

    private OfferSheets(string of, string id, int likeRow, IReadOnlyList<ReadThing<PaperOffer>> offers)
    {
        (Base, Id, LikeRow, Offers) = (of, id, likeRow, offers);
        prices = offers.Select(Prices).Where(IsPriced).FirstOrDefault();
    }

    /// <summary>The sheet that the file names.</summary>
    public string Base { get; }

    /// <summary>The sheet that the prices go to.</summary>
    public string Id { get; }

    /// <summary>First row of the offers that keep the file's sheet.</summary>
    public int LikeRow { get; }

    /// <summary>The offers.</summary>
    public IReadOnlyList<ReadThing<PaperOffer>> Offers { get; }

    /// <summary>True where they have a sheet of their own.</summary>
    public bool IsApart => Id != Base;

    /// <summary>The offers by the sheets that their prices go to, in the order of the file.</summary>
    public static IReadOnlyList<OfferSheets> Of(IReadOnlyList<ReadThing<PaperOffer>> offers) => [.. offers.GroupBy(offer => offer.Thing.SheetId).SelectMany(BySheet)];

    /// <summary>True for a sheet itself and for those that stand in for it.</summary>
    public static bool IsOf(string id, string sheet) => id == sheet || id.StartsWith(sheet + Opening, StringComparison.Ordinal);

    /// <summary>The sheet of its own: of the size and the margins of the file's; null where that is not known.</summary>
    public Sheet? Twin(Shop list) =>
        (list.Sheets.FirstOrDefault(sheet => sheet.Id == Base) ?? (StandardSizes.Find(Base) is { } size ? PriceListTable.SheetOf(size) : null)) is { } like ? like with { Id = Id } : null;

    /// <summary>What printing costs there.</summary>
    public IEnumerable<PrintPrice> Prints()
    {
        if (prices.Black is { } black)
        {
            yield return new PrintPrice(Ink.Black, Id, black, StepRule.AllUnits);
        }

        if (prices.Colour is { } colour)
        {
            yield return new PrintPrice(Ink.Colour, Id, colour, StepRule.AllUnits);
        }
    }

    private static IEnumerable<OfferSheets> BySheet(IGrouping<string, ReadThing<PaperOffer>> bySheet)
    {
        var alike = new List<List<ReadThing<PaperOffer>>>();
        foreach (var offer in bySheet.Where(offer => IsPriced(Prices(offer))))
        {
            if (alike.Find(others => Same(Prices(others[0]), Prices(offer))) is { } known)
            {
                known.Add(offer);
            }
            else
            {
                alike.Add([offer]);
            }
        }

        // Most papers of a sheet keep it, the first of equals; with them those whose printing the file does not price.
        var most = alike.MaxBy(offers => offers.Count) ?? [];
        var keep = bySheet.Where(offer => most.Contains(offer) || !IsPriced(Prices(offer))).ToList();
        return
        [
            new OfferSheets(bySheet.Key, bySheet.Key, keep[0].Row, keep),
            .. alike.Where(offers => offers != most).Select(offers => new OfferSheets(bySheet.Key, Apart(bySheet.Key, offers[0].Thing.Paper), most[0].Row, offers)),
        ];
    }

    // Papers of several weights may share a name, not a weight with it.
    private static string Apart(string sheet, Stock paper) =>
        $"{sheet}{Opening}{(paper.Name.Length > MostName ? paper.Name[..MostName] : paper.Name)} {NumberText.Plain(paper.Weight.Stated)})";

    private static (IReadOnlyList<PriceStep>? Black, IReadOnlyList<PriceStep>? Colour) Prices(ReadThing<PaperOffer> offer) =>
        (Steps(offer.Thing, step => step.Black), Steps(offer.Thing, step => step.Colour));

    private static bool IsPriced((IReadOnlyList<PriceStep>? Black, IReadOnlyList<PriceStep>? Colour) prices) => prices.Black is not null || prices.Colour is not null;

    private static bool Same((IReadOnlyList<PriceStep>? Black, IReadOnlyList<PriceStep>? Colour) one, (IReadOnlyList<PriceStep>? Black, IReadOnlyList<PriceStep>? Colour) other) =>
        (one.Black ?? []).SequenceEqual(other.Black ?? []) && (one.Colour ?? []).SequenceEqual(other.Colour ?? []);

    // Steps count sheets, and printing is counted by the side: n sheets printed on both sides begin at side 2n - 1. Steps at one price are one. Null where the file prices not all of them.
    private static List<PriceStep>? Steps(PaperOffer offer, Func<OfferStep, decimal?> priceOf)
    {
        if (offer.Steps.Any(step => priceOf(step) is null))
        {
            return null;
        }

        var steps = new List<PriceStep>();
        foreach (var step in offer.Steps.Where(step => steps.Count == 0 || priceOf(step) != steps[^1].Each))
        {
            steps.Add(new PriceStep((2 * step.From) - 1, priceOf(step)!.Value));
        }

        return steps;
    }
}
