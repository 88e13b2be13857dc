using BenchmarkDotNet.Attributes;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Tests.Support;

namespace PressRun.Benchmarks;

/// <summary>The example job on fourteen papers for each of its three parts: 2,744 combinations, each costed in full.</summary>
[InProcess]
[MemoryDiagnoser]
[MinColumn]
[MaxIterationCount(20)]
public class ComparingBenchmarks
{
    private const int Stocks = 14;

    private readonly Job job = OnManyStocks();
    private readonly ComparisonRequest request = new(
        [.. Enumerable.Range(0, 3).Select(part => new StockChoice(part, [.. Enumerable.Range(0, Stocks).Select(Id)]))], [], [150]);

    [Benchmark(Description = "14 stocks on 3 parts, 2,744 combinations")]
    public StockComparison Compare() => StockComparer.Compare(job, request).Value;

    private static string Id(int stock) => $"stock-{stock}";

    private static Job OnManyStocks()
    {
        var job = ExampleJob.Create();
        var sheet = job.Shop.Sheets[0].Id;
        var stocks = Enumerable.Range(0, Stocks)
            .Select(index => new Stock(Id(index), Id(index), PaperWeight.FromGrammage(80m + (10m * index)), Length.FromMicrometres(100m + (12m * index)), null, null))
            .ToList();
        return job with
        {
            Stocks = stocks,
            Edition = job.Edition with { Parts = [.. job.Edition.Parts.Select(part => part with { StockId = Id(0) })] },
            Shop = job.Shop with { Paper = [.. stocks.Select((stock, index) => new PaperPrice(stock.Id, sheet, [new PriceStep(1, 0.05m + (0.01m * index))], StepRule.AllUnits))] },
        };
    }
}
