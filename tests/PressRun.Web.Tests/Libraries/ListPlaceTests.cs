using PressRun.Data.Import.Notes;
using PressRun.Data.Shops;
using PressRun.Web.Libraries.Files;

namespace PressRun.Web.Tests.Libraries;

public class ListPlaceTests
{
    private static readonly DateOnly Today = new(2026, 11, 29);
    private static readonly PriceListHead Old = new(Guid.NewGuid(), new DateOnly(2026, 1, 1));
    private static readonly PriceListHead Now = new(Guid.NewGuid(), new DateOnly(2026, 11, 1));

    [Fact]
    public void A_file_of_a_later_day_makes_a_new_list_from_that_day_unless_it_is_said_otherwise()
    {
        var place = Of(Now, new DateOnly(2026, 12, 1));
        Assert.Equal((true, new DateOnly(2026, 12, 1)), (place.AsNew, place.First));

        place.AsNew = false;
        Assert.Equal(Now.ValidFrom, place.First);
    }

    [Fact]
    public void A_file_without_a_day_or_of_an_earlier_or_the_same_one_comes_into_the_open_list_which_keeps_its_day()
    {
        foreach (var day in new DateOnly?[] { null, Now.ValidFrom, new DateOnly(2026, 10, 1) })
        {
            var place = Of(Now, day);
            Assert.Equal((false, Now.ValidFrom), (place.AsNew, place.First));
        }
    }

    [Fact]
    public void A_new_list_is_offered_from_the_files_day_else_from_today_and_never_from_the_open_ones()
    {
        Assert.Equal(new DateOnly(2026, 10, 1), Of(Now, new DateOnly(2026, 10, 1)).Day);
        Assert.Equal(Today, Of(Now, null).Day);
        Assert.Equal(Today, Of(Now, Now.ValidFrom).Day);
        Assert.Equal(Today.AddDays(1), new ListPlace([Now], Now with { ValidFrom = Today }, false, Today).Day);
    }

    [Fact]
    public void A_day_on_which_another_list_begins_stands_in_the_way_and_a_later_list_takes_over()
    {
        var place = Of(Old, Now.ValidFrom);
        Assert.Equal((true, Now), (place.AsNew, place.InTheWay));

        place.Day = new DateOnly(2026, 6, 1);
        Assert.Null(place.InTheWay);
        Assert.Equal(Now.ValidFrom, place.TakenOver);
        Assert.Null(Of(Now, new DateOnly(2026, 12, 1)).TakenOver);
    }

    [Fact]
    public void A_list_without_prices_that_nothing_goes_by_begins_when_the_file_says()
    {
        var place = new ListPlace([Now], Now, true, Today);
        Assert.Equal(Now.ValidFrom, place.First);

        place.Look(new NotedDay(new NoteLine(1, "Valid from 1.12.2026"), new DateOnly(2026, 12, 1)));
        Assert.Equal((false, new DateOnly(2026, 12, 1)), (place.AsNew, place.First));
    }

    private static ListPlace Of(PriceListHead open, DateOnly? noted)
    {
        var place = new ListPlace([Now, Old], open, false, Today);
        place.Look(noted is { } day ? new NotedDay(new NoteLine(1, "a note"), day) : null);
        return place;
    }
}
