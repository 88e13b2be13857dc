using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;

namespace PressRun.Web.Tests.Support;

/// <summary>Requests as they go over the line, broken ones too.</summary>
public static class RawRequests
{
    /// <summary>All that an app answers to a request, after which the line is closed.</summary>
    public static async Task<string> AnswerTo(WebApplication app, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", new Uri(app.Urls.Single()).Port, TestContext.Current.CancellationToken);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request.Replace("\r\n\r\n", "\r\nConnection: close\r\n\r\n", StringComparison.Ordinal)), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream, Encoding.ASCII);
        var answer = (await reader.ReadToEndAsync(TestContext.Current.CancellationToken)).TrimEnd();
        // A body without a length is sent in one chunk, whose size stands before it and whose end is a chunk of none.
        return answer.EndsWith("\r\n0", StringComparison.Ordinal) ? answer[..^3].TrimEnd() : answer;
    }
}
