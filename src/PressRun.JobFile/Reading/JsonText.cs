using System.Globalization;
using System.Text;
using System.Text.Json;
using PressRun.Engine.Costing;

namespace PressRun.JobFile.Reading;

/// <summary>Opens a JSON document (RFC 8259, UTF-8) with limits that bound what a hostile one can cost.</summary>
public static class JsonText
{
    /// <summary>Deepest nesting; the job file itself needs 7 levels.</summary>
    public const int MostLevels = 32;

    /// <summary>Parses a document.</summary>
    /// <param name="utf8">The bytes; a byte order mark is passed over.</param>
    /// <param name="mostBytes">Largest size.</param>
    /// <returns>The document, to be disposed of; or one problem at <c>$</c> that tells line and column.</returns>
    public static Outcome<JsonDocument> Open(ReadOnlyMemory<byte> utf8, int mostBytes)
    {
        if (utf8.Length > mostBytes)
        {
            return TooLarge(mostBytes);
        }

        var bytes = utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8;
        if (!System.Text.Unicode.Utf8.IsValid(bytes.Span))
        {
            return Malformed("The file is not UTF-8 text; save it as UTF-8.");
        }

        try
        {
            RefuseBrokenEscapes(bytes.Span);
            return Outcome<JsonDocument>.Of(JsonDocument.Parse(bytes, new JsonDocumentOptions { MaxDepth = MostLevels }));
        }
        catch (JsonException problem)
        {
            return Malformed(string.Create(
                CultureInfo.InvariantCulture,
                $"The file cannot be read as JSON past {Place(bytes.Span, problem.LineNumber ?? 0, problem.BytePositionInLine ?? 0)}: look for a comma, quote or bracket too many or too few there (or more than {MostLevels} levels)."));
        }
    }

    /// <summary>The refusal of a document that is too large.</summary>
    public static Outcome<JsonDocument> TooLarge(int mostBytes) =>
        Malformed(string.Create(CultureInfo.InvariantCulture, $"The file is larger than {mostBytes:N0} bytes."));

    private static Outcome<JsonDocument> Malformed(string rule) => Outcome<JsonDocument>.Refused(new Problem("$", null, rule));

    // An escape such as \ud800 without its other half is JSON by grammar but no text; every string is looked at once, here, so that
    // reading one later cannot fail.
    private static void RefuseBrokenEscapes(ReadOnlySpan<byte> bytes)
    {
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = MostLevels });
        while (reader.Read())
        {
            if (reader.TokenType is not (JsonTokenType.String or JsonTokenType.PropertyName) || !reader.ValueIsEscaped)
            {
                continue;
            }

            try
            {
                reader.GetString();
            }
            catch (InvalidOperationException problem)
            {
                var before = bytes[..(int)reader.TokenStartIndex];
                var lineStart = before.LastIndexOf((byte)'\n') + 1;
                throw new JsonException(problem.Message, null, before.Count((byte)'\n'), before.Length - lineStart);
            }
        }
    }

    private static string Place(ReadOnlySpan<byte> bytes, long line, long positionInLine)
    {
        var rest = bytes;
        for (var skipped = 0L; skipped < line; skipped++)
        {
            rest = rest[(rest.IndexOf((byte)'\n') + 1)..];
        }

        var column = Encoding.UTF8.GetCharCount(rest[..(int)Math.Min(positionInLine, rest.Length)]);
        return string.Create(CultureInfo.InvariantCulture, $"line {line + 1}, column {column + 1}");
    }
}
