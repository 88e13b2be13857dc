using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Tests.Libraries;

public sealed class GridDocumentTests
{
    [Fact]
    public void An_empty_row_always_stands_at_the_end()
    {
        var document = Loaded(["a", "1"]);

        document.Set(document.Rows[^1].Key, 0, "b", "typing");

        Assert.Equal(["a", "b", ""], document.Rows.Select(row => row.Cells[0]));
    }

    [Fact]
    public void A_pasted_block_goes_to_the_right_and_down_and_makes_the_rows_it_lacks()
    {
        var document = Loaded(["a", "1"], ["b", "2"]);

        document.Put(document.Rows[1].Key, [0, 1], [["x", "7"], ["y", "8"], ["z", "9"]], "a pasted block");

        Assert.Equal(["a 1", "x 7", "y 8", "z 9", " "], Texts(document));
    }

    [Fact]
    public void What_does_not_fit_beside_the_columns_is_left_out()
    {
        var document = Loaded(["a", "1"]);

        document.Put(document.Rows[0].Key, [1], [["7", "lost"]], "a pasted block");

        Assert.Equal("a 7", Texts(document)[0]);
    }

    [Fact]
    public void A_pasted_block_is_one_edit_to_take_back_and_to_do_again()
    {
        var document = Loaded(["a", "1"]);
        document.Put(document.Rows[0].Key, [0, 1], [["x", "7"], ["y", "8"]], "a pasted block");
        var pasted = Texts(document);

        Assert.Equal("a pasted block", document.Undoable);
        Assert.True(document.Undo());
        Assert.Equal(["a 1", " "], Texts(document));
        Assert.True(document.Redo());
        Assert.Equal(pasted, Texts(document));
        Assert.False(document.Redo());
    }

    [Fact]
    public void A_new_edit_forgets_what_was_taken_back()
    {
        var document = Loaded(["a", "1"]);
        document.Set(document.Rows[0].Key, 0, "b", "typing");
        document.Undo();

        document.Set(document.Rows[0].Key, 0, "c", "typing");

        Assert.Null(document.Redoable);
    }

    [Fact]
    public void An_edit_that_changes_nothing_is_none()
    {
        var document = Loaded(["a", "1"]);

        Assert.False(document.Set(document.Rows[0].Key, 0, "a", "typing"));
        Assert.False(document.Clear([document.Rows[^1].Key], [0, 1], "clearing"));
        Assert.Null(document.Undoable);
    }

    [Fact]
    public void A_row_keeps_the_id_it_got_when_edits_before_that_are_taken_back()
    {
        var document = Loaded();
        var key = document.Rows[0].Key;
        document.Set(key, 0, "a", "typing");
        document.Set(key, 0, "b", "typing");

        document.Settle(new Dictionary<string, IReadOnlyList<string>> { [key] = ["b", "id-7"] }, [1]);
        document.Undo();

        Assert.Equal(["a", "id-7"], document.Rows[0].Cells);
    }

    [Fact]
    public void Rows_that_must_not_go_come_back_before_the_empty_one()
    {
        var document = Loaded(["a", "1"], ["b", "2"]);
        var first = document.Rows[0];
        document.Remove([first.Key], "a taken out");

        document.PutBack([first]);

        Assert.Equal(["b 2", "a 1", " "], Texts(document));
    }

    private static GridDocument Loaded(params string[][] rows)
    {
        var document = new GridDocument(2);
        document.Load(rows.Select((cells, at) => new GridRow($"row-{at}", cells)));
        return document;
    }

    private static List<string> Texts(GridDocument document) => [.. document.Rows.Select(row => string.Join(' ', row.Cells))];
}
