using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;
using PressRun.Benchmarks;
using PressRun.Benchmarks.Spreadsheet;

// Without arguments everything is measured; "spreadsheet" alone compares with a headless spreadsheet; the rest is BenchmarkDotNet's own (--filter ...).
if (args is not ["spreadsheet"])
{
    BenchmarkSwitcher.FromAssembly(typeof(CostingBenchmarks).Assembly).Run(args is [] ? ["--filter", "*"] : args, DefaultConfig.Instance);
}

return args is [] or ["spreadsheet"] ? SpreadsheetComparison.Run() : 0;
