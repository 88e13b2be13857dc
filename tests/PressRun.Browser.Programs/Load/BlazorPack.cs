using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Protocol;

namespace PressRun.Browser.Programs.Load;

/// <summary>The protocol that pages speak with their server: the hub protocol over MessagePack under a name of its own.</summary>
internal sealed class BlazorPack : IHubProtocol
{
    private readonly MessagePackHubProtocol packed = new();

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
