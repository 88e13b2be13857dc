using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;

namespace PressRun.Web.Shared;

/// <summary>The browser did not send a file to its end: it was moved, changed or taken away, or the line is bad.</summary>
public sealed class FileUnreadException(Exception reason) : IOException(reason.Message, reason);

/// <summary>A file that somebody chose. The browser sends it as it is read, for as long as <see cref="FileField"/> holds it out.</summary>
public sealed class BrowserFile(IBrowserFile file, long mostBytes)
{
    /// <summary>The whole file in memory: for small ones.</summary>
    /// <exception cref="FileUnreadException">It could not be read to its end.</exception>
    public async Task<ReadOnlyMemory<byte>> BytesAsync()
    {
        using var bytes = new MemoryStream();
        await ReadAsync((stream, cancel) => stream.CopyToAsync(bytes, cancel), CancellationToken.None);
        return bytes.ToArray();
    }

    /// <summary>Reads it piece by piece.</summary>
    /// <param name="into">Puts it where it goes, and does nothing else.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="FileUnreadException">It could not be read to its end.</exception>
    public async Task ReadAsync(Func<Stream, CancellationToken, Task> into, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(into);
        try
        {
            await using var stream = file.OpenReadStream(mostBytes, cancel);
            await into(stream, cancel);
        }
        catch (Exception trouble) when (trouble is IOException or JSException or JSDisconnectedException or TimeoutException or (InvalidOperationException and not ObjectDisposedException))
        {
            // Each is the framework's way to say so, by where it noticed.
            throw new FileUnreadException(trouble);
        }
    }
}
