using PressRun.Web.Charts;

namespace PressRun.Web.Tests.Charts;

public class LabelRoomTests
{
    [Fact]
    public void A_text_lies_near_no_mark_but_its_own()
    {
        var room = new LabelRoom(0, 0, 400, 300);
        room.Take(200, 150);

        // Right of the first mark: a text there would end where this one begins.
        room.Take(262, 158);
        var label = room.Place("beside", 200, 150)!;

        Assert.Equal(("end", 188d), (label.Anchor, label.X));
    }

    [Fact]
    public void Where_only_places_near_other_marks_are_left_a_line_leads_to_the_text()
    {
        var room = new LabelRoom(0, 0, 400, 300);
        foreach (var (x, y) in new[] { (200d, 150d), (228d, 150d), (172d, 150d), (200d, 128d), (200d, 172d) })
        {
            room.Take(x, y);
        }

        Assert.Null(room.Place("seven", 200, 150));
        Assert.True(room.PlaceNear("seven", 200, 150)!.Led);
    }

    [Fact]
    public void Marks_on_one_place_are_one_mark()
    {
        var room = new LabelRoom(0, 0, 400, 300);
        room.Take(200, 150);
        room.Take(203, 151);

        Assert.Equal("start", room.Place("both", 200, 150)!.Anchor);
    }
}
