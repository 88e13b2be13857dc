using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Tests.Libraries;

public sealed class GridRecallTests
{
    private static readonly GridRow[] Stored = [new("paper-1", ["a", "1"]), new("paper-2", ["b", "2"]), new("new-1", ["", ""])];

    private static readonly IReadOnlyList<Column> Columns = new ConsumableShape().Columns;

    [Fact]
    public void A_stored_row_gets_what_was_typed_in_it_and_a_new_one_comes_at_the_end()
    {
        var draft = new GridDraft(false, [new GridRow("paper-2", ["b", "wrong"]), new GridRow("new-1", ["c", ""])]);

        var rows = GridRecall.Merge(Stored, draft, null, Columns);

        Assert.Equal(["a 1", "b wrong", "c "], rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal(rows.Count, rows.Select(row => row.Key).Append("new-1").Distinct().Count() - 1);
    }

    [Fact]
    public void What_was_being_typed_when_the_line_broke_is_put_where_it_was_typed()
    {
        var rows = GridRecall.Merge(Stored, null, new GridTyping("paper-1", 1, "17"), Columns);

        Assert.Equal(["a", "17"], rows[0].Cells);
    }

    [Fact]
    public void A_draft_of_a_table_that_has_other_columns_now_is_no_draft()
    {
        var draft = new GridDraft(true, [new GridRow("paper-1", ["x"])]);

        Assert.Equal(Stored, GridRecall.Merge(Stored, draft, new GridTyping("paper-1", 9, "x"), Columns));
    }

    [Fact]
    public void What_lacks_its_row_its_text_or_its_cells_is_no_draft()
    {
        var draft = new GridDraft(false, [new GridRow(null!, ["x", "1"]), new GridRow("", ["x", "1"]), new GridRow("new-1", null!), new GridRow("new-2", ["x", null!]), null!]);

        foreach (var typing in new[] { new GridTyping(null!, 0, "x"), new GridTyping("", 0, "x"), new GridTyping("new-1", 0, null!), new GridTyping("new-1", -1, "x") })
        {
            Assert.Equal(Stored, GridRecall.Merge(Stored, draft, typing, Columns));
        }
    }

    [Fact]
    public void Rows_that_came_back_before_and_rows_that_are_new_since_come_back_beside_each_other()
    {
        var draft = new GridDraft(false, [new GridRow("back-new-2", ["earlier", ""]), new GridRow("new-2", ["later", ""]), new GridRow("new-2", ["twice", ""])]);

        var rows = GridRecall.Merge(Stored, draft, new GridTyping("new-2", 1, "7"), Columns);

        Assert.Equal(["a 1", "b 2", "earlier ", "later 7"], rows.Select(row => string.Join(' ', row.Cells)));
        Assert.Equal(4, rows.Select(row => row.Key).Distinct().Count());
    }

    [Fact]
    public void A_stored_row_whose_name_begins_with_new_is_changed_where_it_stands()
    {
        GridRow[] stored = [new("new-paper||0", ["New paper", "1"])];

        var rows = GridRecall.Merge(stored, new GridDraft(false, [new GridRow("new-paper||0", ["New paper", "wrong"])]), null, Columns);

        Assert.Equal(["New paper", "wrong"], Assert.Single(rows).Cells);
    }

    [Fact]
    public void What_was_typed_into_a_row_that_was_new_then_comes_back_into_the_row_it_has_become()
    {
        GridRow[] stored = [new("cream||0", ["cream", "Cream", "150 gsm", "", "1.5", "", ""])];
        var draft = new GridDraft(false, [new GridRow("new-4", ["cream", "Cream", "150 gsm", "", "1.5", "shiny", ""]), new GridRow("new-5", ["", "Grey", "", "", "", "", ""])]);

        var rows = GridRecall.Merge(stored, draft, new GridTyping("new-4", 1, "Cream laid"), new StockShape().Columns);

        Assert.Equal([("cream||0", "Cream laid", "shiny"), ("back-new-5", "Grey", "")], rows.Select(row => (row.Key, row.Cells[1], row.Cells[5])));
    }

    [Fact]
    public void Steps_that_are_not_stored_yet_come_back_beside_their_service()
    {
        GridRow[] stored = [Step("a||0", "Letter", "100"), Step("a||1", "Letter", "250"), Step("b||0", "Flat", "500")];
        var draft = new GridDraft(false, [Step("new-1", "letter", "1000"), Step("new-2", "", "2000"), Step("new-3", "Parcel", "5000"), Step("new-4", "", "9000")]);

        var rows = GridRecall.Merge(stored, draft, null, new PostageShape().Columns);

        Assert.Equal(["100", "250", "1000", "2000", "500", "5000", "9000"], rows.Select(row => row.Cells[4]));

        static GridRow Step(string key, string name, string most) => new(key, ["", name, "", "", most, "", "", "", "", "", "", "", ""]);
    }
}
