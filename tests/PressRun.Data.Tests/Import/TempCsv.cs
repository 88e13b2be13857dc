using System.Text;

namespace PressRun.Data.Tests.Import;

/// <summary>A file that is gone after the test.</summary>
internal sealed class TempCsv : IDisposable
{
    public TempCsv(string text, Encoding? encoding = null)
        : this((encoding ?? new UTF8Encoding(false)).GetBytes(text))
    {
    }

    public TempCsv(byte[] bytes) => File.WriteAllBytes(Path, bytes);

    public string Path { get; } = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"pressrun-{Guid.NewGuid():N}.csv");

    public void Dispose() => File.Delete(Path);
}
