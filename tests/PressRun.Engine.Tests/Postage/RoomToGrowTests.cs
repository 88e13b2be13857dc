using PressRun.Engine.Editions;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Tests.Postage;

public class RoomToGrowTests
{
    // Common practice: a folded sheet is two leaves, four pages; a glued book's cover is one sheet.
    [Theory]
    [InlineData(Binding.Saddle, 1, 5, 4)]
    [InlineData(Binding.Saddle, 0, 1, 0)]
    [InlineData(Binding.Side, 0, 5, 5)]
    [InlineData(Binding.Perfect, 0, 5, 0)]
    [InlineData(Binding.Perfect, 1, 5, 5)]
    [InlineData(Binding.Loose, 0, 5, 5)]
    public void A_book_grows_in_the_steps_of_its_binding(Binding binding, int part, int room, int leaves) =>
        Assert.Equal(leaves, RoomToGrow.Leaves(binding, part, room));

    [Fact]
    public void What_can_be_gained_is_a_page_count_that_the_binding_takes()
    {
        foreach (var binding in Enum.GetValues<Binding>())
        {
            for (var room = 0; room <= 12; room++)
            {
                Assert.True(BindingRules.Allows(binding, 1, 8 + (2 * RoomToGrow.Leaves(binding, 1, room))));
            }
        }
    }
}
