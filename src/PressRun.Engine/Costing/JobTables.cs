using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>
/// What is looked up while a job is prepared, and is the same whatever stocks its parts are on, so that a comparison of thousands of
/// combinations builds it, and searches a mixed layout, once. One thread at a time prepares jobs with it; prepared jobs only read it.
/// </summary>
internal sealed class JobTables
{
    private static readonly PostageService[] NoServices = [];

    private readonly Dictionary<string, PostageService[]> servicesByRegion;
    private readonly Dictionary<(Ink Ink, string SheetId), int> printAt = [];
    private readonly Dictionary<(string StockId, string SheetId), int> paperAt = [];
    private readonly CopiesToStart withCollating;
    private readonly CopiesToStart withoutCollating;

    private JobTables(Job job)
    {
        MixedLayouts = new MixedLayouts(job.Edition.Bleed);
        Stocks = job.Stocks.ToDictionary(stock => stock.Id, StringComparer.Ordinal);
        Mailers = job.Mailers.ToDictionary(mailer => mailer.Id, StringComparer.Ordinal);
        Print = [.. job.Shop.Print.Select(price => new StepPrices(price.Steps, price.Rule))];
        Paper = [.. job.Shop.Paper.Select(price => new StepPrices(price.Steps, price.Rule))];
        for (var index = 0; index < job.Shop.Print.Count; index++)
        {
            printAt.TryAdd((job.Shop.Print[index].Ink, job.Shop.Print[index].SheetId), index);
        }

        for (var index = 0; index < job.Shop.Paper.Count; index++)
        {
            paperAt.TryAdd((job.Shop.Paper[index].StockId, job.Shop.Paper[index].SheetId), index);
        }

        servicesByRegion = PostageTable.InForce(job.Postage, job.Date)
            .GroupBy(service => service.Region, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.ToArray(), StringComparer.Ordinal);
        withCollating = Overs(job, shopCollates: false);
        withoutCollating = Overs(job, shopCollates: true);
    }

    public Dictionary<string, Stock> Stocks { get; }

    public Dictionary<string, Mailer> Mailers { get; }

    public MixedLayouts MixedLayouts { get; }

    public StepPrices[] Print { get; }

    public StepPrices[] Paper { get; }

    /// <summary>Builds the tables of a job that keeps the rules across its fields; problems otherwise.</summary>
    public static Outcome<JobTables> Of(Job job)
    {
        var problems = new List<Problem>();
        JobRules.Check(job, problems);
        return problems.Count > 0 ? Outcome<JobTables>.Refused(problems) : Outcome<JobTables>.Of(new JobTables(job));
    }

    /// <summary>Place of a print price in the list; -1 where there is none, as for an unprinted side.</summary>
    public int PrintPrice(Ink ink, string sheetId) => printAt.GetValueOrDefault((ink, sheetId), -1);

    /// <summary>Place of a paper price in the list; -1 where there is none.</summary>
    public int PaperPrice(string stockId, string sheetId) => paperAt.GetValueOrDefault((stockId, sheetId), -1);

    public CopiesToStart CopiesToStart(bool shopCollates) => shopCollates ? withoutCollating : withCollating;

    public PostageService[] ServicesTo(string region) => servicesByRegion.GetValueOrDefault(region, NoServices);

    private static CopiesToStart Overs(Job job, bool shopCollates) => new(
        [job.Shop.Spoilage, .. BenchTime.StepsLeftToDo(job.Bench.Steps, shopCollates).Select(step => step.Spoilage)], job.Bench.Overs);
}
