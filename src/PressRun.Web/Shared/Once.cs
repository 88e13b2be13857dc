namespace PressRun.Web.Shared;

/// <summary>Lets a button do its work once, however often it is pressed before the page has gone on. It lives and goes with the page.</summary>
public sealed class Once
{
    private bool taken;

    /// <summary>Does the work unless it is being done, or was done and the page has not come again since.</summary>
    /// <param name="work">Answers true where the page goes on elsewhere, false where the button may be pressed again.</param>
    public async Task DoAsync(Func<Task<bool>> work)
    {
        if (taken)
        {
            return;
        }

        taken = true;
        var gone = false;
        try
        {
            gone = await work();
        }
        finally
        {
            taken = gone;
        }
    }

    /// <summary>The page has come to where the work led: the button is a new one.</summary>
    public void Again() => taken = false;
}
