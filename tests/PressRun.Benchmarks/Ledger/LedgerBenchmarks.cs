using BenchmarkDotNet.Attributes;
using PressRun.Engine.Copies;

namespace PressRun.Benchmarks.Ledger;

/// <summary>An edition's ledger of 100,000 movements in memory: where it stands, its months, and what its sales say.</summary>
[InProcess]
[MemoryDiagnoser]
[MinColumn]
[MaxIterationCount(20)]
public class LedgerBenchmarks
{
    private const int Lines = 100_000;
    private static readonly DateOnly First = new(2020, 1, 1);

    private readonly List<CopyMovement> movements =
    [
        .. Enumerable.Range(0, Lines).Select(line => line % 1000 == 0
            ? new CopyMovement(First.AddDays(line / 50), line, MovementKind.Printed, 1000, 900m)
            : new CopyMovement(First.AddDays(line / 50), line, MovementKind.Sold, -1, 5m)),
    ];

    [Benchmark(Description = "position from 100,000 movements")]
    public CopiesPosition Position() => CopiesAccount.At(movements);

    [Benchmark(Description = "their months")]
    public int Months() => LedgerMonth.All(movements).Count;

    [Benchmark(Description = "what their sales say")]
    public SalesHistory History() => SalesHistory.Of(movements, First, First.AddDays(Lines / 50), 30);
}
