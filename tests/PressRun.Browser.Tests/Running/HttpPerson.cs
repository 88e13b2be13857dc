using System.Net;
using System.Net.WebSockets;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.SignalR.Client;

namespace PressRun.Browser.Tests.Running;

/// <summary>Somebody who asks without a browser: follows no redirection, runs no script, keeps cookies.</summary>
internal sealed partial class HttpPerson : IDisposable
{
    private readonly CookieContainer cookies = new();
    private readonly HttpClient http;
    private readonly Uri address;

    /// <param name="address">Where the app answers.</param>
    /// <param name="from">The place that they seem to come from; null for this machine.</param>
    public HttpPerson(Uri address, string? from = null)
    {
        this.address = address;
        http = new HttpClient(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = address };
        if (from is not null)
        {
            http.DefaultRequestHeaders.Add("X-Forwarded-For", from);
        }
    }

    public static async Task<HttpPerson> SignedInAsync(Uri address, string email, string? press = null)
    {
        var person = new HttpPerson(address);
        using var answer = await person.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = PeopleApp.Password });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        if (press is not null)
        {
            person.cookies.Add(address, new Cookie("press", press));
        }

        return person;
    }

    /// <summary>Somebody who took a copy of this one's cookies, and keeps it as it was.</summary>
    public HttpPerson Copied()
    {
        var copy = new HttpPerson(address);
        copy.cookies.Add(cookies.GetAllCookies());
        return copy;
    }

    public Task<HttpResponseMessage> AskAsync(string method, string path, HttpContent? body = null) =>
        http.SendAsync(new HttpRequestMessage(new HttpMethod(method), path.TrimStart('/')) { Content = body });

    /// <summary>Opens an address with a header by which a browser says where that comes from.</summary>
    public Task<HttpResponseMessage> ComeAsync(string path, string header, string from)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path.TrimStart('/'));
        request.Headers.Add(header, from);
        return http.SendAsync(request);
    }

    /// <summary>Opens a page and sends its first form, filled in.</summary>
    public Task<HttpResponseMessage> FillAsync(string page, Dictionary<string, string> fields) => SendAsync(page, page, fields);

    /// <summary>Sends a form to an address with the token of a page.</summary>
    public async Task<HttpResponseMessage> SendAsync(string page, string to, Dictionary<string, string> fields)
    {
        using var opened = await AskAsync("GET", page);
        var text = await opened.Content.ReadAsStringAsync();
        fields["__RequestVerificationToken"] = Token().Match(text).Groups[1].Value;
        if (Handler().Match(text) is { Success: true } handler && page == to)
        {
            fields["_handler"] = handler.Groups[1].Value;
        }

        return await AskAsync("POST", to, new FormUrlEncodedContent(fields));
    }

    /// <summary>Opens a line as a page does (with the first message of its protocol), and leaves it open.</summary>
    public async Task<ClientWebSocket> OpenLineAsync()
    {
        var line = new ClientWebSocket();
        line.Options.Cookies = cookies;
        await line.ConnectAsync(new UriBuilder(new Uri(address, "_blazor")) { Scheme = "ws" }.Uri, CancellationToken.None);
        await line.SendAsync(Encoding.UTF8.GetBytes("{\"protocol\":\"blazorpack\",\"version\":1}\u001e"), WebSocketMessageType.Text, endOfMessage: true, CancellationToken.None);
        return line;
    }

    /// <summary>Opens a page and a line with it, as its browser would.</summary>
    public async Task<(HubConnection Line, ServedPage Page)> OpenPageAsync(string path)
    {
        var page = new Uri(address, path);
        var served = await ServedPage.FetchAsync(cookies, page);
        var line = BlazorPack.LineTo(address, cookies);
        await line.StartAsync();
        await line.InvokeAsync<string>("StartCircuit", address.ToString(), page.ToString(), "[]", served.State);
        await line.SendAsync("UpdateRootComponents", served.Additions, served.State);
        return (line, served);
    }

    /// <summary>Begins a page that shows nothing, and loses its line.</summary>
    /// <returns>By what the server knows the page.</returns>
    public async Task<string> LeavePageAsync()
    {
        await using var line = BlazorPack.LineTo(address, cookies);
        await line.StartAsync();
        return await line.InvokeAsync<string>("StartCircuit", address.ToString(), address.ToString(), "[]", "");
    }

    public void Dispose() => http.Dispose();

    public override string ToString() => $"somebody at {address}";

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("name=\"_handler\" value=\"([^\"]+)\"")]
    private static partial Regex Handler();
}
