using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;

namespace PressRun.Web.People;

/// <summary>Knows whose a page is, and counts it among theirs for as long as the server holds it. It is told as soon as a page begins, even one that never shows anything, and ends
/// with the page's services. A page that is only fetched counts too, for as long as that takes.</summary>
internal sealed class HeldPages(LiveSessions live) : ServerAuthenticationStateProvider, IHostEnvironmentAuthenticationStateProvider, IDisposable
{
    private IDisposable? counted;

    void IHostEnvironmentAuthenticationStateProvider.SetAuthenticationState(Task<AuthenticationState> authenticationStateTask)
    {
        SetAuthenticationState(authenticationStateTask);
        if (authenticationStateTask.IsCompletedSuccessfully && WhoClaims.Person(authenticationStateTask.Result.User) is { } person)
        {
            counted ??= live.Hold(person);
        }
    }

    public void Dispose() => counted?.Dispose();
}
