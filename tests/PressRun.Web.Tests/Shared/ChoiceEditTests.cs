using Bunit;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class ChoiceEditTests
{
    [Fact]
    public async Task Choosing_saves_the_value_and_a_refusal_is_said_beside_it()
    {
        await using var page = new BunitContext();
        var saved = "";
        var choice = page.Render<ChoiceEdit<string>>(parameters => parameters
            .Add(part => part.Label, "Paper")
            .Add(part => part.Value, "thin")
            .Add(part => part.Choices, new List<(string, string)> { ("thin", "Thin cream"), ("thick", "Thick card") })
            .Add(part => part.Save, value =>
            {
                saved = value;
                return Task.FromResult<string?>("The shop has no price for it.");
            }));
        await choice.Find("select").ChangeAsync(new() { Value = "1" });
        Assert.Equal("thick", saved);
        foreach (var none in new[] { "-1", "2", "2147483647" })
        {
            saved = "nothing";
            await choice.Find("select").ChangeAsync(new() { Value = none });
            Assert.Equal("nothing", saved);
        }

        await choice.Find("select").ChangeAsync(new() { Value = "1" });
        Assert.Equal("The shop has no price for it.", choice.Find("[role=alert]").TextContent);
    }
}
