using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Data.Conversions;

/// <summary>Text of a whole document and back.</summary>
/// <param name="Write">Document to text.</param>
/// <param name="Read">Text to document.</param>
internal sealed record JobFileShape<T>(Func<T, string> Write, Func<string, T> Read);

internal static class JobFileShape
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(), new LengthJson(), new MassJson() },
    };

    public static JobFileShape<Shop> Shop { get; } = Of<Shop>();

    public static JobFileShape<BenchRates> Bench { get; } = Of<BenchRates>();

    public static JobFileShape<IReadOnlyList<MassStep>> MassSteps { get; } = Of<IReadOnlyList<MassStep>>();

    /// <summary>Keeps a property as one jsonb document. Documents never change, so another one is known by its reference.</summary>
    public static PropertyBuilder<T> HasJobFileShape<T>(this PropertyBuilder<T> property, JobFileShape<T> shape)
        where T : class =>
        property.HasColumnType("jsonb").HasConversion(
            document => shape.Write(document),
            text => shape.Read(text),
            new ValueComparer<T>((left, right) => ReferenceEquals(left, right), document => document.GetHashCode(), document => document));

    private static JobFileShape<T> Of<T>() => new(
        document => JsonSerializer.Serialize(document, Options),
        text => JsonSerializer.Deserialize<T>(text, Options) ?? throw new InvalidOperationException("A document in the database is null."));

    private sealed class LengthJson : JsonConverter<Length>
    {
        public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Length.FromMillimetres(reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Millimetres);
    }

    private sealed class MassJson : JsonConverter<Mass>
    {
        public override Mass Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Mass.FromGrams(reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, Mass value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Grams);
    }
}
