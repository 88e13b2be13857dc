using Bunit;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class TradeWordTests
{
    [Fact]
    public async Task A_word_of_the_trade_is_a_button_that_shows_its_meaning()
    {
        await using var page = new BunitContext();
        var word = page.Render<TradeWord>(parameters => parameters.Add(part => part.Word, "Landed cost"));
        Assert.Equal(("Landed cost", "false"), (word.Find("button").TextContent, word.Find("button").GetAttribute("aria-expanded")));
        Assert.Empty(word.FindAll(".meaning"));
        await word.Find("button").ClickAsync(new());
        Assert.Equal("true", word.Find("button").GetAttribute("aria-expanded"));
        Assert.StartsWith("Everything the run costs", word.Find(".meaning").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plain_word_stands_as_it_is()
    {
        await using var page = new BunitContext();
        Assert.Equal("Copies", page.Render<TradeWord>(parameters => parameters.Add(part => part.Word, "Copies")).Markup.Trim());
    }
}
