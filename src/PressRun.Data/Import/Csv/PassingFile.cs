using Microsoft.Win32.SafeHandles;

namespace PressRun.Data.Import.Csv;

/// <summary>A file on its way through the server: nobody else on the machine may read it, and nothing is left of it however the server ends. It has no name from the beginning, or,
/// where the system cannot do without one, none once it is closed by whatever closes it.</summary>
public sealed class PassingFile : IDisposable
{
    private readonly SafeFileHandle file;

    private PassingFile(SafeFileHandle file) => this.file = file;

    /// <summary>Makes an empty one.</summary>
    /// <param name="folder">Where there is room for it.</param>
    public static PassingFile In(string folder)
    {
        var path = Path.Combine(folder, $"pressrun-{Guid.NewGuid():N}");
        if (OperatingSystem.IsWindows())
        {
            return new PassingFile(File.OpenHandle(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, FileOptions.DeleteOnClose));
        }

        using var made = new FileStream(path, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite });
        var file = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite);
        File.Delete(path);
        return new PassingFile(file);
    }

    /// <summary>What stands in it, from its beginning; each stream has a place of its own.</summary>
    public Stream Read() => new Place(file);

    /// <summary>Fills it from its beginning.</summary>
    public async Task FillAsync(Stream from, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(from);
        var buffer = new byte[64 * 1024];
        long at = 0;
        for (int read; (read = await from.ReadAsync(buffer, cancel)) > 0; at += read)
        {
            await RandomAccess.WriteAsync(file, buffer.AsMemory(0, read), at, cancel);
        }
    }

    /// <summary>Ends it; whoever still reads is told that it is gone.</summary>
    public void Dispose() => file.Dispose();

    private sealed class Place(SafeFileHandle file) : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => true;

        public override bool CanWrite => false;

        public override long Length => RandomAccess.GetLength(file);

        public override long Position { get; set; }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            var read = RandomAccess.Read(file, buffer, Position);
            Position += read;
            return read;
        }

        public override long Seek(long offset, SeekOrigin origin) =>
            Position = offset + (origin switch { SeekOrigin.Begin => 0, SeekOrigin.Current => Position, _ => Length });

        public override void Flush()
        {
            // Nothing is written by it.
        }

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
