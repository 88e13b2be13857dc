using System.Text;
using Microsoft.AspNetCore.Components.Forms;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Support;

/// <summary>A file as somebody chooses it in the browser.</summary>
internal sealed class ChosenFile(string text) : IBrowserFile
{
    private readonly byte[] bytes = Encoding.UTF8.GetBytes(text);

    public static BrowserFile Of(string text) => new(new ChosenFile(text), long.MaxValue);

    /// <summary>What the framework throws where it is not sent.</summary>
    public Exception? Fault { get; init; }

    public string Name => "chosen.csv";

    public DateTimeOffset LastModified => DateTimeOffset.UnixEpoch;

    public long Size => bytes.Length;

    public string ContentType => "text/csv";

    public Stream OpenReadStream(long maxAllowedSize = 512_000, CancellationToken cancellationToken = default) =>
        Fault is null ? new MemoryStream(bytes) : throw Fault;
}
