using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Web.Papers;

namespace PressRun.Web.Tests.Support;

/// <summary>The plan of <see cref="ARun"/> with a mailer, a carrier and further papers.</summary>
public static class APost
{
    public static readonly Mailer Board = new("board", "Board envelope", Mm(240m), Mm(170m), Mm(1m), Mass.FromGrams(20m), 0.30m);

    public static readonly Mailer Note = new("note", "Note envelope", Mm(150m), Mm(110m), Mm(0.4m), Mass.FromGrams(5m), 0.05m);

    /// <summary>Grammages of papers of which the shop has a price for all but the last, which is called <c>unpriced</c>.</summary>
    public static IReadOnlyList<Stock> Papers { get; } =
    [
        .. new[] { 70m, 95m, 110m, 130m, 150m }.Select(gsm => new Stock($"g{gsm}", $"Heron {gsm}", PaperWeight.FromGrammage(gsm), Length.FromMicrometres(gsm * 1.2m), null, null)),
        new("unpriced", "Unpriced laid", PaperWeight.FromGrammage(100m), Length.FromMicrometres(120m), null, null),
    ];

    public static JobSource Source()
    {
        var source = Records.Source();
        return source with
        {
            Mailers = [Board, Note],
            Postage =
            [
                new PostageService("flat", "Heronpost flat", "home", ARun.Day, Mm(350m), Mm(250m), Mm(20m), null, null, null, [Step(75m, 1.50m), Step(150m, 2.20m), Step(500m, 3m)]),
                new PostageService("slim", "Heronpost slim", "home", ARun.Day, Mm(230m), null, Mm(2m), null, null, null, [Step(60m, 0.90m)]),
            ],
            Channels = [.. source.Channels, new Channel("post", "Own web shop", 6m, false, 0m, 0m, 0m, 0m, 1, "board", "home", 0m, 1m)],
            Stocks = [.. source.Stocks, .. Papers],
            PriceList = source.PriceList with { Paper = [.. source.PriceList.Paper, .. Papers.SkipLast(1).Select((stock, place) => new PaperPrice(stock.Id, "a3", [new PriceStep(1, 0.04m + (0.01m * place))], StepRule.AllUnits))] },
        };
    }

    public static PapersView View(JobSource? of = null)
    {
        var source = of ?? Source();
        return new PapersView(
            new TitleRecord(Guid.NewGuid(), "marsh-letters", "Marsh Letters", "A. Reed", "#445566", "", false, 1), source, [(source.Plan.Id, source.Plan.Name)], [.. source.Stocks.Select(stock => stock.Id)], [Board, Note]);
    }

    private static MassStep Step(decimal grams, decimal price) => new(Mass.FromGrams(grams), price);

    private static Length Mm(decimal millimetres) => Length.FromMillimetres(millimetres);
}
