using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Tests.Libraries;

public sealed class GridRecallTests
{
    private static readonly GridRow[] Stored = [new("paper-1", ["a", "1"]), new("paper-2", ["b", "2"]), new("new-1", ["", ""])];

    [Fact]
    public void A_stored_row_gets_what_was_typed_in_it_and_a_new_one_comes_at_the_end()
    {
        var draft = new GridDraft(false, [new GridRow("paper-2", ["b", "wrong"]), new GridRow("new-1", ["c", ""])]);

        var rows = GridRecall.Merge(Stored, draft, null, 2);

        Assert.Equal(["a 1", "b wrong", "c "], rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal(rows.Count, rows.Select(row => row.Key).Append("new-1").Distinct().Count() - 1);
    }

    [Fact]
    public void What_was_being_typed_when_the_line_broke_is_put_where_it_was_typed()
    {
        var rows = GridRecall.Merge(Stored, null, new GridTyping("paper-1", 1, "17"), 2);

        Assert.Equal(["a", "17"], rows[0].Cells);
    }

    [Fact]
    public void A_draft_of_a_table_that_has_other_columns_now_is_no_draft()
    {
        var draft = new GridDraft(true, [new GridRow("paper-1", ["x"])]);

        Assert.Equal(["a 1", "b 2"], GridRecall.Merge(Stored, draft, new GridTyping("paper-1", 9, "x"), 2).Select(row => string.Join(' ', row.Cells)));
    }
}
