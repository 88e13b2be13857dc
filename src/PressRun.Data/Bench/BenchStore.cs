using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Bench;

/// <summary>What one press does at its own table.</summary>
public sealed class BenchStore
{
    private readonly PressDatabase database;

    internal BenchStore(PressDatabase database) => this.database = database;

    /// <summary>The press's bench rates, or null where there is no such press.</summary>
    public async Task<LibraryItem<BenchRates>?> LoadAsync(PressId press, CancellationToken cancel = default) =>
        await database.ReadAsync(press, db => db.Benches.AsNoTracking().SingleOrDefaultAsync(cancel), cancel) is { } row ? Item(row) : null;

    /// <summary>Saves the press's bench rates.</summary>
    public Task<SaveResult<LibraryItem<BenchRates>>> SaveAsync(PressId press, LibraryItem<BenchRates> bench, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<LibraryItem<BenchRates>>>(
            press,
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM bench_rates WHERE press_id = {press.Value} FOR UPDATE", cancel);
                var row = await db.Benches.SingleOrDefaultAsync(cancel);
                if (row is null)
                {
                    return new SaveResult<LibraryItem<BenchRates>>.Gone();
                }

                if (row.Version != bench.Version)
                {
                    return new SaveResult<LibraryItem<BenchRates>>.Conflict(Item(row));
                }

                if (Problems(bench.Item) is { Count: > 0 } problems)
                {
                    return new SaveResult<LibraryItem<BenchRates>>.Refused(problems);
                }

                await PlanChoices.KeepStepsAsync(db, row.Rates.Steps.Select(step => step.Name), bench.Item.Steps.Select(step => step.Name), cancel);
                row.Rates = bench.Item;
                await db.SaveChangesAsync(cancel);
                return new SaveResult<LibraryItem<BenchRates>>.Saved(Item(row));
            },
            cancel);

    private static LibraryItem<BenchRates> Item(BenchRow row) => new(row.Rates, false, row.Version);

    private static List<Problem> Problems(BenchRates rates)
    {
        var problems = Contract.Problems(
            json => BenchWriter.WriteMembers(json, rates, Contract.NoCurrency), (element, path, found) => BenchBlock.Read(element, path, found));
        problems.AddRange(NameProblems(rates));
        return problems;
    }

    /// <summary>Steps that are called as another is, and steps and things used up whose name does not read as it stands; empty where none is.</summary>
    internal static List<Problem> NameProblems(BenchRates rates)
    {
        List<Problem> problems = [.. LibraryRules.Names("steps", rates.Steps.Select(step => step.Name)), .. LibraryRules.Names("consumables", rates.Consumables.Select(thing => thing.Name))];
        for (var index = 0; index < rates.Steps.Count; index++)
        {
            var step = rates.Steps[index];
            if (rates.Steps.Take(index).Any(earlier => earlier.Name == step.Name))
            {
                problems.Add(new Problem($"$.steps[{index}].name", step.Name, "Each step has a name of its own, by which a plan takes it."));
            }
        }

        return problems;
    }
}
