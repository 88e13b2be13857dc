using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using PressRun.Data.Bench;
using PressRun.Engine.Costing;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads an archive from one file, or from a folder that holds its sections in files of their own: press.json, stocks.json,
/// shops/ID.json, mailers.json, postage.json, channels.json, bench.json, benchLimits.json, archived.json, titles/ID.json and quotes/NUMBER.json. A problem in a folder names the file.</summary>
internal static class ArchiveFiles
{
    /// <summary>Largest archive, and largest file of one, in bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    private static readonly string[] Sections = ["stocks", "mailers", "postage", "channels", "bench", BenchLimitsShape.Name, "archived"];
    private static readonly string[] ListSections = ["shops", "titles", "quotes"];

    /// <summary>Reads a file's bytes.</summary>
    public static Outcome<PressArchive> Read(ReadOnlyMemory<byte> utf8)
    {
        var opened = JsonText.Open(utf8, MostBytes);
        if (!opened.Succeeded)
        {
            return Outcome<PressArchive>.Refused(opened.Problems);
        }

        using var document = opened.Value;
        return ArchiveReader.Read(document.RootElement);
    }

    /// <summary>Reads a folder or a file by its path.</summary>
    public static async Task<Outcome<PressArchive>> ReadAsync(string path, CancellationToken cancel)
    {
        if (File.Exists(path))
        {
            return new FileInfo(path).Length > MostBytes
                ? Outcome<PressArchive>.Refused(JsonText.TooLarge(MostBytes).Problems)
                : Read(await File.ReadAllBytesAsync(path, cancel));
        }

        var main = Path.Combine(path, "press.json");
        return File.Exists(main)
            ? await new Join(path).ReadAsync(main, cancel)
            : Outcome<PressArchive>.Refused(new Problem("$", path, "There is neither a file of this name nor a folder with press.json in it."));
    }

    /// <summary>Joins a folder to one document, and remembers which file each place came from.</summary>
    private sealed class Join(string folder)
    {
        private readonly Dictionary<string, string> files = new(StringComparer.Ordinal);
        private readonly List<Problem> problems = [];
        private readonly ArrayBufferWriter<byte> bytes = new();

        public async Task<Outcome<PressArchive>> ReadAsync(string main, CancellationToken cancel)
        {
            using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            {
                json.WriteStartObject();
                await WriteMainAsync(json, main, cancel);
                foreach (var section in Sections)
                {
                    await WriteSectionAsync(json, section, cancel);
                }

                foreach (var section in ListSections)
                {
                    await WriteListAsync(json, section, cancel);
                }

                json.WriteEndObject();
            }

            if (problems.Count > 0)
            {
                return Outcome<PressArchive>.Refused(problems);
            }

            var read = Read(bytes.WrittenMemory);
            return read.Succeeded ? read : Outcome<PressArchive>.Refused([.. read.Problems.Select(InItsFile)]);
        }

        private async Task WriteMainAsync(Utf8JsonWriter json, string main, CancellationToken cancel)
        {
            using var document = await OpenAsync(main, cancel);
            if (document?.RootElement.ValueKind == JsonValueKind.Object)
            {
                foreach (var member in document.RootElement.EnumerateObject())
                {
                    member.WriteTo(json);
                }
            }
        }

        private async Task WriteSectionAsync(Utf8JsonWriter json, string section, CancellationToken cancel)
        {
            var file = Path.Combine(folder, section + ".json");
            if (File.Exists(file) && await OpenAsync(file, cancel) is { } document)
            {
                using (document)
                {
                    json.WritePropertyName(section);
                    document.RootElement.WriteTo(json);
                    files["$." + section] = section + ".json";
                }
            }
        }

        private async Task WriteListAsync(Utf8JsonWriter json, string section, CancellationToken cancel)
        {
            var parts = Path.Combine(folder, section);
            if (!Directory.Exists(parts))
            {
                return;
            }

            json.WriteStartArray(section);
            var index = 0;
            foreach (var file in Directory.GetFiles(parts, "*.json").Order(StringComparer.Ordinal))
            {
                if (await OpenAsync(file, cancel) is { } document)
                {
                    using (document)
                    {
                        document.RootElement.WriteTo(json);
                        files[FormattableString.Invariant($"$.{section}[{index++}]")] = $"{section}/{Path.GetFileName(file)}";
                    }
                }
            }

            json.WriteEndArray();
        }

        private async Task<JsonDocument?> OpenAsync(string file, CancellationToken cancel)
        {
            var opened = JsonText.Open(await File.ReadAllBytesAsync(file, cancel), MostBytes);
            if (opened.Succeeded)
            {
                return opened.Value;
            }

            problems.AddRange(opened.Problems.Select(problem => problem with { Path = $"{Path.GetRelativePath(folder, file)} {problem.Path}" }));
            return null;
        }

        private Problem InItsFile(Problem problem)
        {
            foreach (var (place, file) in files)
            {
                if (problem.Path.StartsWith(place, StringComparison.Ordinal) && (problem.Path.Length == place.Length || problem.Path[place.Length] is '.' or '['))
                {
                    return problem with { Path = $"{file} ${problem.Path[place.Length..]}" };
                }
            }

            return problem with { Path = "press.json " + problem.Path };
        }
    }
}
