using Bunit;
using PressRun.Web.Payouts;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Payouts;

public sealed class ClaimsEditTests
{
    [Fact]
    public async Task The_amount_that_was_refused_is_marked_until_it_is_typed_anew()
    {
        await using var page = new BunitContext();
        var lines = page.Render<ClaimsEdit>(parameters => parameters
            .Add(part => part.Rows, [new ClaimRow { Name = "Ada", Value = "1" }, new ClaimRow { Name = "Bo", Value = "much", Refused = "much" }])
            .Add(part => part.Format, Written.Metric).Add(part => part.DraftKey, "key").Add(part => part.Problem, "Write how much Bo gets as a number."));

        var amounts = lines.FindAll("input.short-number");
        Assert.Equal([null, "true"], amounts.Select(field => field.GetAttribute("aria-invalid")));
        Assert.Equal(lines.Find("[role=alert]").Id, amounts[1].GetAttribute("aria-describedby"));

        await amounts[1].InputAsync(new() { Value = "2" });
        Assert.All(lines.FindAll("input.short-number"), field => Assert.False(field.HasAttribute("aria-invalid")));
    }
}
