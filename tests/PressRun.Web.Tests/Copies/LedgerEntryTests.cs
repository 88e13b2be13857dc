using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Web.Copies;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

public class LedgerEntryTests
{
    [Fact]
    public void A_sale_brings_the_printings_price_until_another_amount_is_typed()
    {
        var entry = Entry();
        entry.Type(LedgerEntry.Copies, "3");
        Assert.Equal("18.00", entry.Text(LedgerEntry.Amount));
        entry.Type(LedgerEntry.Amount, "15");
        entry.Type(LedgerEntry.Copies, "4");

        var line = entry.Read()!;
        Assert.Equal((ALedger.Today, MovementKind.Sold, 4, 15m, "fair"), (line.Day, line.Kind, line.Copies, line.Amount, line.ChannelId));
        Assert.Equal(entry.Id, line.Id);
    }

    [Fact]
    public void What_cannot_be_read_is_said_beside_its_field_and_stays_as_typed()
    {
        var entry = Entry();
        entry.Type(LedgerEntry.Day, "");
        entry.Type(LedgerEntry.Copies, "three");
        entry.Type(LedgerEntry.Amount, "-4");

        Assert.Null(entry.Read());
        Assert.All([LedgerEntry.Day, LedgerEntry.Copies, LedgerEntry.Amount], field => Assert.NotNull(entry.Problem(field)));
        Assert.Equal(("three", "-4"), (entry.Text(LedgerEntry.Copies), entry.Text(LedgerEntry.Amount)));
        entry.Type(LedgerEntry.Copies, "3");
        Assert.Null(entry.Problem(LedgerEntry.Copies));
    }

    [Fact]
    public void A_gift_moves_no_money_and_names_no_channel()
    {
        var entry = Entry();
        entry.Type(LedgerEntry.Copies, "3");
        entry.Type(LedgerEntry.Kind, nameof(MovementKind.GivenAway));
        var line = entry.Read()!;
        Assert.Equal((0m, null), (line.Amount, line.ChannelId));
    }

    [Fact]
    public void What_the_ledger_refuses_is_said_beside_the_field_it_is_about()
    {
        var entry = Entry();
        entry.Refuse([new Problem("$.day", "2027-01-01", "Not a day to come."), new Problem("$", null, "Gone.")]);
        Assert.Equal(("Not a day to come.", "Gone."), (entry.Problem(LedgerEntry.Day), entry.Problem(LedgerEntry.Note)));
    }

    [Fact]
    public void The_next_line_has_an_id_of_its_own_and_stays_on_the_day_and_the_channel()
    {
        var entry = Entry();
        entry.Type(LedgerEntry.Day, "2026-04-01");
        entry.Type(LedgerEntry.Channel, "");
        entry.Type(LedgerEntry.Copies, "3");
        entry.Type(LedgerEntry.Note, "rain");
        var next = entry.After(Printed());

        Assert.NotEqual(entry.Id, next.Id);
        Assert.True(next.IsUntouched);
        Assert.Equal(("2026-04-01", "", "", ""), (next.Text(LedgerEntry.Day), next.Text(LedgerEntry.Channel), next.Text(LedgerEntry.Copies), next.Text(LedgerEntry.Note)));
        Assert.Equal((entry.Id, "3"), (entry.On(Printed()).Id, entry.On(Printed()).Text(LedgerEntry.Copies)));
    }

    [Fact]
    public void A_count_after_a_line_of_another_day_is_of_today_unless_its_own_day_is_typed()
    {
        var sale = Entry();
        sale.Type(LedgerEntry.Day, "2026-04-01");
        sale.Type(LedgerEntry.Copies, "3");
        var count = sale.After(Printed());
        count.Type(LedgerEntry.Kind, nameof(MovementKind.Counted));
        count.Type(LedgerEntry.Copies, "40");
        Assert.Equal(ALedger.Today, count.Read()!.Day);
        Assert.Equal(ALedger.Today, count.On(Printed()).Read()!.Day);

        count.Type(LedgerEntry.Day, "2026-04-01");
        Assert.Equal(new DateOnly(2026, 4, 1), count.Read()!.Day);
        Assert.Equal(PressFormat.Written(ALedger.Today), count.After(Printed()).Text(LedgerEntry.Day));
    }

    [Fact]
    public void What_a_count_changes_is_said_as_it_is_written() => Assert.Equal(
        ["Written down: the count of 2 March 2026, 41 fewer than the ledger had.", "Written down: the count of 2 March 2026, 2 more than the ledger had.", "Written down: the count of 2 March 2026, as many as the ledger had."],
        new[] { -41, 2, 0 }.Select(copies => LedgerWords.Written(ALedger.Line(0, MovementKind.Counted, copies), Written.Metric)));

    [Fact]
    public void A_printing_begins_with_what_the_plan_knows_and_leaves_out_steps_nobody_timed()
    {
        var entry = new LedgerEntry(ALedger.View(), Written.Metric);
        Assert.Equal((MovementKind.Printed, "100", "12.00"), (entry.What, entry.Text(LedgerEntry.Copies), entry.Text(PrintingEntry.Fixed)));
        entry.Type(PrintingEntry.Shop, "80");

        var untimed = entry.Read()!;
        Assert.Empty(untimed.Printing!.Steps);
        Assert.Equal(92m, untimed.Amount);

        entry.Type(PrintingEntry.Minutes(0), "90");
        entry.Type(PrintingEntry.Spoiled(0), "4");
        var timed = entry.Read()!;
        // Ninety minutes at 10.00 an hour.
        Assert.Equal(92m + 15m, timed.Amount);
        Assert.Equal(new StepActual("fold", 90m, 100, 4), Assert.Single(timed.Printing!.Steps));
    }

    [Fact]
    public void A_step_cannot_spoil_more_than_went_in_nor_more_tax_come_back_than_was_paid()
    {
        var entry = new LedgerEntry(ALedger.View(), Written.Metric);
        entry.Type(PrintingEntry.Shop, "80");
        entry.Type(PrintingEntry.Tax, "81");
        entry.Type(PrintingEntry.Minutes(0), "90");
        entry.Type(PrintingEntry.Spoiled(0), "101");
        Assert.Null(entry.Read());
        Assert.NotNull(entry.Problem(PrintingEntry.Spoiled(0)));
        Assert.NotNull(entry.Problem(PrintingEntry.Tax));
    }

    private static LedgerEntry Entry() => new(Printed(), Written.Metric);

    private static CopiesView Printed() => ALedger.View(ALedger.Line(0, MovementKind.Printed, 50, 100m));
}
