using PressRun.Data.Access;
using PressRun.Data.Fixes;
using PressRun.Data.Titles;
using PressRun.Web.Editions;
using PressRun.Web.Tests.Shelf;

namespace PressRun.Web.Tests.Editions;

[Collection<OnSample>]
public sealed class FixServiceTests(StoredShelf stored)
{
    [Fact]
    public async Task What_was_ticked_off_waits_again_unless_somebody_else_settled_it_since()
    {
        using var program = Visiting.As(new Visitor.Program());
        var (press, service) = (stored.Press.Id, new FixService(stored.Of<FixNoteStore>()));
        var printing = (await stored.Service.ShowAsync(press, new ShelfFilter())).Titles.SelectMany(on => on.Editions.Select(edition => (Title: on.Title.Id, edition.Edition))).First();
        var noticed = FixNote.Noticed(printing.Edition.Id, "the map's margin is cut", null);
        Assert.Null((await service.AddAsync(press, noticed)).Problem);
        var (note, mended, carried) = (await NoteAsync(), printing.Edition.Printing + 1, printing.Edition.Printing + 2);
        FixNote Mended(FixNote now) => now with { MendedIn = mended };

        Assert.Null(await service.ChangeAsync(press, note, Mended));
        Assert.Null(await service.TakeBackAsync(press, note, Mended(note)));
        Assert.Null((await NoteAsync()).MendedIn);

        Assert.Null(await service.ChangeAsync(press, note, Mended));
        Assert.Null(await service.ChangeAsync(press, await NoteAsync(), now => now with { MendedIn = null, CarriedPast = carried }));
        Assert.Equal("This was changed since, so it stays as it is.", await service.TakeBackAsync(press, note, Mended(note)));
        Assert.Equal(carried, (await NoteAsync()).CarriedPast);
        Assert.Equal("This was changed since, so it stays as it is.", await service.TakeOutAsync(press, note));
        Assert.Null(await service.TakeOutAsync(press, await NoteAsync()));

        async Task<FixNote> NoteAsync() => (await service.OfTitleAsync(press, printing.Title)).Single(one => one.Id == noticed.Id);
    }
}
