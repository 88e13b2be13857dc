using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Conversions;

/// <summary>
/// Single blocks of the job file. A thing is stored only where the contract's own reader takes what its own writer makes of it: whatever is in
/// the database can be exported, costed and imported again, and a person hears of one set of rules.
/// </summary>
internal static class Contract
{
    /// <summary>ISO 4217's code for no currency. Amounts are written in full whatever the currency is; it only adds zeros.</summary>
    public static readonly Currency NoCurrency = new("XXX", 0);

    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What the contract has against a block; empty where nothing.</summary>
    /// <param name="writeMembers">Writes it.</param>
    /// <param name="read">Reads it.</param>
    public static List<Problem> Problems(Action<Utf8JsonWriter> writeMembers, Action<JsonElement, JsonPath, ProblemList> read)
    {
        using var document = JsonDocument.Parse(Text(writeMembers));
        var problems = new ProblemList();
        read(document.RootElement, JsonPath.Root, problems);
        return [.. problems.Problems];
    }

    /// <summary>A block as text.</summary>
    public static string Text(Action<Utf8JsonWriter> writeMembers)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            json.WriteStartObject();
            writeMembers(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.WrittenSpan);
    }

    /// <summary>A block from text that <see cref="Text"/> wrote.</summary>
    /// <exception cref="InvalidOperationException">It does not keep the contract: something else wrote it.</exception>
    public static T Read<T>(string text, Func<JsonElement, JsonPath, ProblemList, T?> read)
        where T : class
    {
        using var document = JsonDocument.Parse(text);
        var problems = new ProblemList();
        var value = read(document.RootElement, JsonPath.Root, problems);
        return problems.IsEmpty && value is not null
            ? value
            : throw new InvalidOperationException($"A {typeof(T).Name} in the database does not keep the contract: {string.Join("; ", problems.Problems)}");
    }
}
