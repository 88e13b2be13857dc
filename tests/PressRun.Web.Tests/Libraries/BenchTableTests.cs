using System.Globalization;
using PressRun.Data;
using PressRun.Data.Access;
using PressRun.Data.Bench;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Shelf;

namespace PressRun.Web.Tests.Libraries;

[Collection<OnSample>]
public sealed class BenchTableTests(StoredShelf stored)
{
    [Fact]
    public async Task A_step_goes_back_to_what_it_was_only_where_nobody_else_has_changed_it_since()
    {
        using var program = Visiting.As(new Visitor.Program());
        var (press, store) = (stored.Press.Id, stored.Of<BenchStore>());
        var table = (await BenchTable.LoadAsync(store, press, new CellManners(CultureInfo.InvariantCulture, UnitSystem.Metric)))!;
        var whole = table.Rates;
        var before = whole.Steps[0];
        var (learned, theirs) = (before with { SecondsPerCopy = before.SecondsPerCopy + 1.5m }, before with { SecondsPerCopy = before.SecondsPerCopy + 7m });
        Assert.Null(await table.PutStepAsync(before, learned));
        Assert.Null(await table.PutStepAsync(learned, before));
        Assert.Null(await table.PutStepAsync(before, learned));

        await ElsewhereAsync(rates => rates with { Steps = [theirs, .. rates.Steps.Skip(1)] });
        Assert.StartsWith("Somebody else changed the bench", await table.SetAsync(BenchTable.Terms[0], "21"), StringComparison.Ordinal);
        Assert.Equal("This was changed since, so it stays as it is.", await table.PutStepAsync(learned, before));
        Assert.Equal(theirs, (await store.LoadAsync(press))!.Item.Steps[0]);
        await ElsewhereAsync(_ => whole);

        async Task ElsewhereAsync(Func<BenchRates, BenchRates> change)
        {
            var now = (await store.LoadAsync(press))!;
            Assert.IsType<SaveResult<LibraryItem<BenchRates>>.Saved>(await store.SaveAsync(press, now with { Item = change(now.Item) }));
        }
    }
}
