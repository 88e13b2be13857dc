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
    public async Task Taking_an_edit_back_may_forget_all_of_them()
    {
        var edits = new UndoStack();
        edits.Add("pages", () =>
        {
            edits.Clear();
            return Task.FromResult<string?>(null);
        });
        Assert.Null(await edits.TakeBackAsync());
        Assert.Null(edits.Next);
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

    [Fact]
    public async Task Edits_are_taken_back_one_after_the_other_each_over_what_the_one_before_brought_back()
    {
        var (edits, thing, page) = (new UndoStack(), Guid.NewGuid(), new Row());
        page.Edit(edits, thing, "second");
        page.Edit(edits, thing, "third");
        await edits.TakeBackAsync();
        page.Edit(edits, thing, "fourth");
        Assert.Null(await edits.TakeBackAsync());
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("first", page.Text);
        Assert.Null(edits.Next);
    }

    [Fact]
    public async Task An_edit_is_not_taken_back_over_what_somebody_else_made_of_it_whoever_saved_last()
    {
        var (edits, thing, page) = (new UndoStack(), Guid.NewGuid(), new Row());
        page.Edit(edits, thing, "second");
        page.Save(page.Version, "by somebody else");
        page.Edit(edits, thing, "third");
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("by somebody else", page.Text);
        Assert.Equal("Somebody else was first.", await edits.TakeBackAsync());
        Assert.Equal("by somebody else", page.Text);
    }

    [Fact]
    public async Task What_was_not_stored_because_two_versions_wait_is_not_told_as_taken_back()
    {
        var edits = new UndoStack();
        edits.Add("copies", Guid.NewGuid(), 1, 2, _ => Task.FromResult(default(SaveAnswer)));
        Assert.StartsWith("Somebody else was first.", await edits.TakeBackAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_version_that_says_the_same_is_as_good_as_the_one_that_was_saved_and_a_save_of_nothing_new_is_taken_back_too()
    {
        var (edits, thing, page) = (new UndoStack(), Guid.NewGuid(), new Row());
        page.Edit(edits, thing, "second");
        var saved = page.Version;
        page.Save(saved, page.Text);
        edits.SaysAgain(thing, saved, page.Version);
        edits.Add("nothing", thing, page.Version, page.Version, over => Task.FromResult(new SaveAnswer(null, over)));
        Assert.Null(await edits.TakeBackAsync());
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("first", page.Text);
    }

    [Fact]
    public async Task Steps_that_follow_each_other_at_once_are_one_edit_that_goes_back_to_where_they_began()
    {
        var (edits, thing, page, at) = (new UndoStack(), Guid.NewGuid(), new Row(), DateTimeOffset.UnixEpoch);
        page.Edit(edits, thing, "120");
        for (var copies = 121; copies <= 125; copies++)
        {
            page.Step(edits, thing, $"{copies}", at += TimeSpan.FromSeconds(1));
        }

        Assert.Equal("120 to 125", edits.Next);
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("120", page.Text);
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("first", page.Text);
    }

    [Fact]
    public async Task A_step_after_a_while_or_of_another_thing_or_after_somebody_elses_save_is_an_edit_of_its_own()
    {
        var (edits, thing, page, at) = (new UndoStack(), Guid.NewGuid(), new Row(), DateTimeOffset.UnixEpoch);
        page.Step(edits, thing, "121", at);
        page.Step(edits, thing, "122", at += TimeSpan.FromSeconds(10));
        Assert.Equal("121 to 122", edits.Next);
        new Row().Step(edits, Guid.NewGuid(), "7", at);
        page.Step(edits, thing, "123", at);
        Assert.Equal("122 to 123", edits.Next);
        page.Save(page.Version, "theirs");
        page.Step(edits, thing, "124", at);
        Assert.Null(await edits.TakeBackAsync());
        Assert.Equal("theirs", page.Text);
    }

    // What is stored, with a version that every save must carry and renews.
    private sealed class Row
    {
        public uint Version { get; private set; } = 1;

        public string Text { get; private set; } = "first";

        public SaveAnswer Save(uint over, string text)
        {
            if (over != Version)
            {
                return new SaveAnswer("Somebody else was first.", null);
            }

            Text = text;
            return new SaveAnswer(null, ++Version);
        }

        public void Step(UndoStack edits, Guid thing, string text, DateTimeOffset at)
        {
            var (was, version) = (Text, Version);
            edits.AddStep(thing, was, version, Save(version, text).Version!.Value, at, first => $"{first} to {text}", (first, over) => Task.FromResult(Save(over, first)));
        }

        public void Edit(UndoStack edits, Guid thing, string text)
        {
            var (before, version) = (Text, Version);
            edits.Add(text, thing, version, Save(version, text).Version!.Value, over => Task.FromResult(Save(over, before)));
        }
    }

    private static Task<string?> Done(List<string> log, string what)
    {
        log.Add(what);
        return Task.FromResult<string?>(null);
    }
}
