using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Web.Layout;

namespace PressRun.Web.Tests.Layout;

public sealed class PlaceLinkTests
{
    [Theory]
    [InlineData("", true)]
    [InlineData("?find=gull", true)]
    [InlineData("shelf", true)]
    [InlineData("papers", false)]
    public async Task The_place_that_the_app_opens_with_is_marked_at_the_root_and_at_its_own_address(string address, bool marked)
    {
        await using var page = new BunitContext();
        page.Services.GetRequiredService<NavigationManager>().NavigateTo(address);

        Assert.Equal(marked, page.Render<PlaceLink>(with => with.AddUnmatched("href", "shelf").Add(link => link.AtRoot, true)).Find("a").ClassList.Contains("active"));
        Assert.DoesNotContain("active", page.Render<PlaceLink>(with => with.AddUnmatched("href", "post")).Find("a").ClassList);
    }
}
