using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using PressRun.Benchmarks;
using PressRun.Benchmarks.Ledger;
using PressRun.Benchmarks.Share;
using PressRun.Benchmarks.Shelf;
using PressRun.Benchmarks.Spreadsheet;

// Without arguments everything but the shelf is measured; "spreadsheet" alone compares with a headless spreadsheet, "shelf" and "ledger" alone time the shelf of a
// large press and a long ledger on a private PostgreSQL, "share" the page of a share link beside a bare endpoint; the rest is BenchmarkDotNet's own (--filter ...).
if (args is ["shelf"])
{
    return await ShelfSearch.RunAsync();
}

if (args is ["ledger"])
{
    return await LedgerTimes.RunAsync();
}

if (args is ["share"])
{
    return await SharePageTimes.RunAsync();
}

if (args is not ["spreadsheet"])
{
    BenchmarkSwitcher.FromAssembly(typeof(CostingBenchmarks).Assembly).Run(args is [] ? ["--filter", "*"] : args, DefaultConfig.Instance);
}

return args is [] or ["spreadsheet"] ? SpreadsheetComparison.Run() : 0;
