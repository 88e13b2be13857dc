using PressRun.Data.Fixes;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

public sealed class FixNoteTests(PostgresFixture postgres)
{
    [Fact]
    public async Task A_note_waits_at_every_later_printing_until_it_is_mended_or_carried_on()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var note = SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, " the map is cut ", 12)));

        Assert.Equal(("the map is cut", 12, 1), (note.Text, note.Page, note.Printing));
        Assert.Equal([false, true, true], new[] { 1, 2, 3 }.Select(note.WaitsAt));
        var carried = SmallPress.Saved(await stores.Fixes.SaveAsync(small.Id, note with { CarriedPast = 2 }));
        Assert.Equal([false, true], new[] { 2, 3 }.Select(carried.WaitsAt));
        var mended = SmallPress.Saved(await stores.Fixes.SaveAsync(small.Id, carried with { MendedIn = 3 }));
        Assert.Equal([false, false], new[] { 3, 4 }.Select(mended.WaitsAt));
        Assert.Equal(mended, Assert.Single(await stores.Fixes.OfTitleAsync(small.Id, small.Title.Id)));
        Assert.IsType<SaveResult<FixNote>.Conflict>(await stores.Fixes.SaveAsync(small.Id, note));
    }

    [Fact]
    public async Task A_note_sent_twice_is_written_once_and_taken_out_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var note = FixNote.Noticed(small.Edition.Id, "a smudge", null);

        // Other notes go in meanwhile, so that the same one meets itself on its way.
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(place =>
            stores.Fixes.AddAsync(small.Id, place % 2 == 0 ? note : FixNote.Noticed(small.Edition.Id, $"another {place}", null))));

        Assert.Equal(40, answers.Count(answer => answer is SaveResult<FixNote>.Saved));
        var stands = (await stores.Fixes.OfTitleAsync(small.Id, small.Title.Id)).Single(one => one.Id == note.Id);
        var mended = SmallPress.Saved(await stores.Fixes.SaveAsync(small.Id, stands with { MendedIn = 2 }));
        Assert.IsType<DeleteResult.Changed>(await stores.Fixes.DeleteAsync(small.Id, stands));
        Assert.IsType<DeleteResult.Deleted>(await stores.Fixes.DeleteAsync(small.Id, mended));
        Assert.IsType<DeleteResult.Gone>(await stores.Fixes.DeleteAsync(small.Id, mended));
    }

    [Theory]
    [InlineData("", null, null, 0, "$.text")]
    [InlineData("two\nlines", null, null, 0, "$.text")]
    [InlineData("a smudge", 0, null, 0, "$.page")]
    [InlineData("a smudge", null, 1, 0, "$.mendedIn")]
    [InlineData("a smudge", null, null, 1, "$.carriedPast")]
    public async Task What_cannot_be_is_refused(string text, int? page, int? mendedIn, int carriedPast, string path)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var note = FixNote.Noticed(small.Edition.Id, text, page) with { MendedIn = mendedIn, CarriedPast = carriedPast };

        var refused = Assert.IsType<SaveResult<FixNote>.Refused>(await stores.Fixes.AddAsync(small.Id, note));

        Assert.Equal(path, Assert.Single(refused.Problems).Path);
    }

    [Fact]
    public async Task A_printing_that_is_taken_out_takes_its_own_notes_along_and_lets_those_wait_that_it_had_settled()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var second = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        var mended = SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, "a smudge", 3) with { MendedIn = 2 }));
        var carried = SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, "thin paper", null) with { CarriedPast = 2 }));
        SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(second.Id, "the new cover curls", null)));

        Assert.IsType<DeleteResult.Deleted>(await stores.Editions.DeleteAsync(small.Id, second));

        var left = await stores.Fixes.OfTitleAsync(small.Id, small.Title.Id);
        Assert.Equal([mended.Id, carried.Id], left.Select(note => note.Id));
        Assert.All(left, note => Assert.True(note.WaitsAt(2)));
    }

    [Fact]
    public async Task Notes_go_out_and_come_in_with_their_press()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, "a smudge", 3) with { MendedIn = 4, CarriedPast = 3 }));
        foreach (var number in Enumerable.Range(1, 12))
        {
            SmallPress.Saved(await stores.Fixes.AddAsync(small.Id, FixNote.Noticed(small.Edition.Id, $"thin paper, sheet {number}", null)));
        }

        var copy = (await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!)).Value;

        var title = (await stores.Titles.FindAsync(copy.Id, small.Title.Slug))!;
        var notes = await stores.Fixes.OfTitleAsync(copy.Id, title.Id);
        Assert.Contains(("a smudge", 3, 4, 3), notes.Select(note => (note.Text, note.Page, note.MendedIn, note.CarriedPast)));
        Assert.Equal((await stores.Fixes.OfTitleAsync(small.Id, small.Title.Id)).Select(note => note.Text), notes.Select(note => note.Text));
        Assert.Equal(await stores.Archives.ExportAsync(small.Id), await stores.Archives.ExportAsync(copy.Id));
    }
}
