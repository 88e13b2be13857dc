using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Http.Connections;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.AspNetCore.SignalR.Protocol;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace PressRun.Browser.Tests.Running;

/// <summary>The protocol that pages speak with their server: the hub protocol over MessagePack under a name of its own.</summary>
internal sealed class BlazorPack : IHubProtocol
{
    private readonly MessagePackHubProtocol packed = new();

    /// <summary>A line to the app as a page has one, not yet open.</summary>
    /// <param name="app">Where the app answers.</param>
    /// <param name="cookies">The cookies of its browser.</param>
    public static HubConnection LineTo(Uri app, CookieContainer cookies)
    {
        var line = new HubConnectionBuilder().WithUrl(new Uri(app, "_blazor"), HttpTransportType.WebSockets, http => http.Cookies = cookies);
        line.Services.RemoveAll<IHubProtocol>();
        line.Services.AddSingleton<IHubProtocol, BlazorPack>();
        return line.Build();
    }

    /// <inheritdoc/>
    public string Name => "blazorpack";

    /// <inheritdoc/>
    public int Version => 1;

    /// <inheritdoc/>
    public TransferFormat TransferFormat => packed.TransferFormat;

    /// <inheritdoc/>
    public bool IsVersionSupported(int version) => version == Version;

    /// <inheritdoc/>
    public bool TryParseMessage(ref ReadOnlySequence<byte> input, IInvocationBinder binder, [NotNullWhen(true)] out HubMessage? message) => packed.TryParseMessage(ref input, binder, out message);

    /// <inheritdoc/>
    public void WriteMessage(HubMessage message, IBufferWriter<byte> output) => packed.WriteMessage(message, output);

    /// <inheritdoc/>
    public ReadOnlyMemory<byte> GetMessageBytes(HubMessage message) => packed.GetMessageBytes(message);
}
