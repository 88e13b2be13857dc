using Microsoft.JSInterop;
using PressRun.Data.Presses;

namespace PressRun.Web.Layout;

/// <summary>Goes over to another press: the browser remembers it, and the shelf opens anew.</summary>
public static class PressChoice
{
    /// <summary>Opens a press.</summary>
    /// <param name="js">The browser.</param>
    /// <param name="press">Which.</param>
    /// <param name="takenIn">True where it was taken in from a file just now, which its shelf then says.</param>
    public static async Task OpenAsync(IJSRuntime js, PressId press, bool takenIn = false)
    {
        await using var table = await js.InvokeAsync<IJSObjectReference>("import", "./js/table.js");
        await table.InvokeVoidAsync("choosePress", CurrentPress.CookieName, press.ToString(), takenIn ? "shelf?taken-in=true" : "shelf");
    }

    /// <summary>Has the browser remember a press, and stays where one is.</summary>
    /// <param name="js">The browser.</param>
    /// <param name="press">Which.</param>
    public static async Task KeepAsync(IJSRuntime js, PressId press)
    {
        await using var cookies = await js.InvokeAsync<IJSObjectReference>("import", "./js/cookies.js");
        await cookies.InvokeVoidAsync("keepChoice", CurrentPress.CookieName, press.ToString());
    }
}
