using System.Net;
using System.Text;

namespace PressRun.Browser.Tests.Running;

/// <summary>Phones on pages that they keep.</summary>
internal static class Phones
{
    /// <summary>A phone on a page.</summary>
    public static async Task<Visit> OpenAsync(Chromium chromium, AppProcess app, string path)
    {
        var phone = await Visit.BeginAsync(chromium.Browser, app.Address);
        await phone.Page.SetViewportSizeAsync(390, 844);
        await phone.OpenAsync(path);
        return phone;
    }

    /// <summary>Has the server get the phone's first message, and the phone no answer.</summary>
    /// <returns>Tells how many messages the phone has sent.</returns>
    public static async Task<Func<int>> LoseFirstAnswerAsync(Visit phone, string address)
    {
        var sent = 0;
        await phone.Page.RouteAsync("**/" + address, async route =>
        {
            if (Interlocked.Increment(ref sent) == 1)
            {
                await route.FetchAsync();
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });
        return () => Volatile.Read(ref sent);
    }

    /// <summary>What is to be tapped on a page and is too small for a finger (WCAG 2.2 asks for 24 px at AA and 44 at AAA, 2.5.5).</summary>
    public static async Task<IReadOnlyList<string>> SmallAsync(Visit phone)
    {
        await phone.Page.EvaluateAsync("() => document.querySelectorAll('details').forEach(details => { details.open = true; })");
        return await phone.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button, a, select, input, summary')].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => e.outerHTML.slice(0, 120))");
    }

    /// <summary>Sends a message without a browser.</summary>
    public static async Task<HttpStatusCode> SendAsync(AppProcess app, string address, string body, string type = "application/json", string? origin = null)
    {
        using var http = new HttpClient { BaseAddress = app.Address };
        using var message = new HttpRequestMessage(HttpMethod.Post, address) { Content = new StringContent(body, Encoding.UTF8, type) };
        if (origin is not null)
        {
            message.Headers.Add("Origin", origin);
        }

        using var answer = await http.SendAsync(message, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }
}
