using Microsoft.Playwright;

namespace PressRun.Browser.Tests.Running;

/// <summary>Somebody who has no pointer.</summary>
internal static class Keys
{
    private const int MostStops = 120;

    /// <summary>Presses Tab until something is reached, which then stands out: a ring or a line around it.</summary>
    public static async Task TabToAsync(IPage page, ILocator wanted)
    {
        for (var stop = 0; stop < MostStops; stop++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await wanted.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                Assert.True(
                    await wanted.EvaluateAsync<bool>("element => element.matches(':focus-visible')"), "What has the focus shows it.");
                return;
            }
        }

        Assert.Fail($"{MostStops} presses of Tab do not reach {wanted}.");
    }

    /// <summary>Presses Tab until a link is reached, and Enter.</summary>
    public static async Task FollowAsync(IPage page, ILocator link)
    {
        await TabToAsync(page, link);
        await page.Keyboard.PressAsync("Enter");
    }
}
