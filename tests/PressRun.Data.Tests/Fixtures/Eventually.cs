namespace PressRun.Data.Tests.Fixtures;

/// <summary>Waits for what becomes true a little later; how long it took is nobody's business here.</summary>
internal static class Eventually
{
    /// <summary>Waits until it holds, for a minute at most.</summary>
    public static async Task HoldsAsync(Func<Task<bool>> holds)
    {
        for (var attempt = 0; attempt < 600; attempt++)
        {
            if (await holds())
            {
                return;
            }

            await Task.Delay(100);
        }

        Assert.Fail("It did not come about within a minute.");
    }
}
