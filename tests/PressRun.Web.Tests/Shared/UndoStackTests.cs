using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class UndoStackTests
{
    [Fact]
    public async Task The_last_edit_is_taken_back_first()
    {
        var (edits, log) = (new UndoStack(), new List<string>());
        edits.Add("first", () => Done(log, "first"));
        edits.Add("second", () => Done(log, "second"));
        Assert.Equal("second", edits.Next);
        await edits.TakeBackAsync();
        await edits.TakeBackAsync();
        await edits.TakeBackAsync();
        Assert.Equal(["second", "first"], log);
        Assert.Null(edits.Next);
    }

    [Fact]
    public async Task An_edit_that_cannot_be_taken_back_stays()
    {
        var edits = new UndoStack();
        edits.Add("pages", () => Task.FromResult<string?>("Somebody else saved it."));
        Assert.Equal("Somebody else saved it.", await edits.TakeBackAsync());
        Assert.Equal("pages", edits.Next);
    }

    [Fact]
    public async Task Of_very_many_edits_the_oldest_are_forgotten()
    {
        var (edits, log) = (new UndoStack(), new List<string>());
        for (var i = 0; i < 60; i++)
        {
            var name = $"{i}";
            edits.Add(name, () => Done(log, name));
        }

        while (edits.Next is not null)
        {
            await edits.TakeBackAsync();
        }

        Assert.Equal(50, log.Count);
        Assert.Equal("10", log[^1]);
    }

    private static Task<string?> Done(List<string> log, string what)
    {
        log.Add(what);
        return Task.FromResult<string?>(null);
    }
}
