using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

public class JobSchemaTests
{
    private static readonly Lazy<JsonSchema> Loaded = new(() => JsonSchema.FromText(Encoding.UTF8.GetString(JobResources.Schema)));

    /// <summary>True where the schema takes the document.</summary>
    public static bool Takes(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        using var document = JsonDocument.ParseValue(ref reader);
        return Loaded.Value.Evaluate(document.RootElement).IsValid;
    }

    [Fact]
    public void Is_a_schema_of_draft_2020_12()
    {
        using var schema = JsonDocument.Parse(JobResources.Schema);

        Assert.True(MetaSchemas.Draft202012.Evaluate(schema.RootElement).IsValid);
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema.RootElement.GetProperty("$schema").GetString());
    }

    [Fact]
    public void Takes_the_worked_example_and_the_sample()
    {
        Assert.True(Takes(Example.Bytes("job")));
        Assert.True(Takes(JobResources.SampleJob));
        Assert.True(JobReader.Read(JobResources.SampleJob).Succeeded);
    }

    [Fact]
    public void Takes_every_job_that_can_be_written() => JobFileGen.Job.Sample(job => Assert.True(Takes(JobWriter.Write(job))), iter: 300);

    [Theory]
    [InlineData("edition.page.width", "\" 5 1/2IN \"")]
    [InlineData("edition.page.width", "\"5-1/2 \\\"\"")]
    [InlineData("edition.page.width", "\"5½ inches\"")]
    [InlineData("edition.page.width", "\"5.5″\"")]
    [InlineData("edition.page.width", "\"11 / 2 in\"")]
    [InlineData("edition.page.width", "\"14. cm\"")]
    [InlineData("edition.page.width", "\".14m\"")]
    [InlineData("stocks.silk-cover.caliper", "\"230 µm\"")]
    [InlineData("stocks.silk-cover.caliper", "\"230 μm\"")]
    [InlineData("stocks.silk-cover.weight", "\"120 G/M²\"")]
    [InlineData("stocks.silk-cover.weight", "\"120 g/m^2\"")]
    [InlineData("stocks.silk-cover.weight", "\"80# Book\"")]
    [InlineData("stocks.silk-cover.weight", "\"20lbs writing\"")]
    [InlineData("bench.fittingsMass", "\"1/5 OZ\"")]
    [InlineData("bench.hourlyRate", "15")]
    [InlineData("bench.hourlyRate", "1.5e1")]
    [InlineData("bench.hourlyRate", "\"1.5E+1\"")]
    [InlineData("bench.hourlyRate", "\"15.\"")]
    [InlineData("bench.steps.0.spoilage", "\"0.02\"")]
    [InlineData("quantity", "150.0")]
    [InlineData("quantity", "1.5e2")]
    [InlineData("shop.order.carton", "null")]
    [InlineData("shop.order.delivery", """{ "perFurtherKg": 1 }""")]
    public void Takes_every_way_of_writing_that_the_reader_takes(string place, string json)
    {
        var job = Example.With(place, json);

        Assert.True(Example.Read(job).Succeeded);
        Assert.True(Takes(Encoding.UTF8.GetBytes(job.ToJsonString())));
    }

    [Fact]
    public void Both_refuse_an_unknown_key_in_every_object()
    {
        var places = new List<string>();
        Collect(Example.Job(), string.Empty, places);
        Assert.True(places.Count > 40);
        foreach (var place in places)
        {
            var job = Example.With(place + "unheardOf", "1");
            var problem = Assert.Single(Example.Read(job).Problems);
            Assert.EndsWith(".unheardOf", problem.Path, StringComparison.Ordinal);
            Assert.False(Takes(Encoding.UTF8.GetBytes(job.ToJsonString())), place);
        }
    }

    [Theory]
    [MemberData(nameof(JobReaderRefusalTests.BadInput), MemberType = typeof(JobReaderRefusalTests))]
    public void Refuses_what_one_place_alone_shows_to_be_wrong(string place, string json, string path, string rule)
    {
        _ = path;
        // What only a calendar, a table of currencies, the value behind a unit or another place can tell is the reader's.
        string[] others =
        [
            "no stock", "no sheet", "Did you mean \"silk-cover\"?", "Did you mean \"board\"?", "already", "rise", "more than 2000 g", "begin at 1", "same validFrom", "at most 10,000 pages", "fewest",
            "at 25, or above", "at most 10,000 quantities", "1 mm to 10 m", "above 0", "1 to 10,000 g/m²", "at least 1 g", "ISO 4217", "2026-03-02", "one line", "amount of money", "0 or more", "a mass",
        ];
        if (rule.Length > 0 && !others.Any(other => rule.Contains(other, StringComparison.Ordinal)))
        {
            Assert.False(Takes(Encoding.UTF8.GetBytes(Example.With(place, json).ToJsonString())));
        }
    }

    private static void Collect(JsonNode node, string place, List<string> places)
    {
        if (node is JsonObject members)
        {
            places.Add(place);
            foreach (var (name, value) in members)
            {
                if (value is not null)
                {
                    Collect(value, $"{place}{name}.", places);
                }
            }
        }
        else if (node is JsonArray items)
        {
            for (var index = 0; index < items.Count; index++)
            {
                Collect(items[index]!, $"{place}{index}.", places);
            }
        }
    }
}
