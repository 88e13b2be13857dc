using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using PressRun.JobFile;
using PressRun.Web.Api;

namespace PressRun.Web.Tests.Api;

/// <summary>A host with the HTTP interface alone.</summary>
internal sealed class ApiHost : IAsyncDisposable
{
    private readonly WebApplication app;

    private ApiHost(WebApplication app)
    {
        this.app = app;
        Client = app.GetTestClient();
    }

    public HttpClient Client { get; }

    public static async Task<ApiHost> Start(Dictionary<string, string?>? settings = null, TimeProvider? time = null)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Configuration.AddInMemoryCollection(settings);
        builder.Services.AddPressRunApi();
        if (time is not null)
        {
            builder.Services.AddSingleton(time);
        }

        var app = builder.Build();
        app.MapPressRunApi();
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new ApiHost(app);
    }

    public static JsonObject Sample() => JsonNode.Parse(JobResources.SampleJob)!.AsObject();

    public Task<HttpResponseMessage> Post(string path, JsonNode job, CancellationToken cancel = default) =>
        Post(path, Encoding.UTF8.GetBytes(job.ToJsonString()), "application/json", cancel);

    public async Task<HttpResponseMessage> Post(string path, byte[] body, string? mediaType, CancellationToken cancel = default)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(cancel, TestContext.Current.CancellationToken);
        var content = new ByteArrayContent(body);
        content.Headers.ContentType = mediaType is null ? null : MediaTypeHeaderValue.Parse(mediaType);
        return await Client.PostAsync(path, content, ended.Token);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await app.DisposeAsync();
    }
}
