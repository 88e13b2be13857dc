using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Results;
using PressRun.Web.Api;

namespace PressRun.Web.Tests.Api;

public class JobEffortTests
{
    private const string Digits = "0.0001111111111111111111111111";

    [Theory]
    [InlineData(JobQuestion.Estimate)]
    [InlineData(JobQuestion.Ladder)]
    [InlineData(JobQuestion.Impose)]
    [InlineData(JobQuestion.Compare)]
    [InlineData(JobQuestion.Reprint)]
    public void What_a_press_asks_is_short_with_assured_overs_too(JobQuestion question)
    {
        Assert.True(JobEffort.IsShort(question, Read(ApiHost.Sample())));
        Assert.True(JobEffort.IsShort(question, Read(Assured(ApiHost.Sample(), "0.05"))));
    }

    [Fact]
    public void A_ladder_of_some_thousands_is_short() => Assert.True(JobEffort.IsShort(JobQuestion.Ladder, Read(Ladder(ApiHost.Sample(), 1, 5_000))));

    [Theory]
    [InlineData("0.99", 0.95)]
    [InlineData("0.03", 0.95)]
    [InlineData("0.03", 0.9999999)]
    public void Assured_overs_of_distant_quantities_make_a_plan_long(string spoilage, double confidence)
    {
        var job = Reprint(ApiHost.Sample(), 1_000_000, 201);
        Assert.True(JobEffort.IsShort(JobQuestion.Reprint, Read(job)));
        Assert.False(JobEffort.IsShort(JobQuestion.Reprint, Read(Assured(job, spoilage, confidence))));
    }

    [Fact]
    public void Assured_overs_of_hardly_surviving_copies_make_a_ladder_long() =>
        Assert.False(JobEffort.IsShort(JobQuestion.Ladder, Read(Assured(Ladder(ApiHost.Sample(), 1, 5_000), "0.99999"))));

    [Theory]
    [InlineData("shop", "finishing", "{ \"name\": \"f$\", \"per\": \"copy\", \"each\": \"" + Digits + "\", \"minimum\": \"0\" }")]
    [InlineData("bench", "consumables", "{ \"name\": \"c$\", \"perCopy\": \"" + Digits + "\" }")]
    [InlineData("bench", "steps", "{ \"name\": \"s$\", \"secondsPerCopy\": 1, \"spoilage\": \"" + Digits + "\" }")]
    [InlineData("edition", "fixedCosts", "{ \"name\": \"x$\", \"amount\": \"0.01\" }")]
    public void Long_lists_make_a_ladder_long(string block, string list, string entry)
    {
        var job = Ladder(ApiHost.Sample(), 1, 5_000);
        job[block]![list] = Many(500, entry);
        Assert.False(JobEffort.IsShort(JobQuestion.Ladder, Read(job)));
    }

    [Fact]
    public void Long_staircases_of_prices_and_long_lists_of_sold_quantities_make_a_ladder_long()
    {
        var job = Ladder(ApiHost.Sample(), 1, 5_000);
        foreach (var price in job["shop"]!["print"]!.AsArray())
        {
            price!["rule"] = "incremental";
            price["steps"] = new JsonArray([.. Enumerable.Range(1, 500).Select(from => new JsonObject { ["from"] = from, ["each"] = "1" })]);
        }

        Assert.False(JobEffort.IsShort(JobQuestion.Ladder, Read(job)));

        job = Ladder(ApiHost.Sample(), 1, 5_000);
        job["shop"]!["quantities"] = new JsonArray([.. Enumerable.Range(1_000, 9_000).Select(quantity => JsonValue.Create(quantity))]);
        Assert.False(JobEffort.IsShort(JobQuestion.Ladder, Read(job)));
    }

    [Theory]
    [InlineData("""{ "kind": "poisson", "mean": 1000000 }""")]
    [InlineData("""{ "kind": "negativeBinomial", "mean": 10000, "shape": 0.01 }""")]
    [InlineData("""{ "kind": "opinion", "low": 0, "likely": 5, "high": 1000000 }""")]
    public void A_demand_that_reaches_far_makes_a_plan_long(string demand)
    {
        var job = Reprint(ApiHost.Sample(), 100, 10);
        job["reprint"]!["demand"] = JsonNode.Parse(demand);
        Assert.False(JobEffort.IsShort(JobQuestion.Reprint, Read(job)));
    }

    [Fact]
    public void Post_that_is_looked_up_for_many_channels_makes_a_comparison_long()
    {
        var job = ApiHost.Sample();
        var (service, channel) = (job["postage"]![0]!, job["channels"]!.AsArray().First(way => way!["postageRegion"] is not null)!);
        service["steps"] = new JsonArray([.. Enumerable.Range(1, 20).Select(step => new JsonObject { ["most"] = $"{step * 100} g", ["price"] = "1" })]);
        job["postage"] = new JsonArray([.. Enumerable.Range(0, 400).Select(number => Named(service, $"p{number}"))]);
        job["channels"] = new JsonArray([.. Enumerable.Range(0, 100).Select(number => Named(channel, $"c{number}"))]);
        job["channels"]!.AsArray().ToList().ForEach(way => way!["mix"] = 0.01m);
        Assert.False(JobEffort.IsShort(JobQuestion.Compare, Read(job)));
    }

    private static JsonNode Named(JsonNode node, string id)
    {
        var copy = node.DeepClone();
        copy["id"] = id;
        return copy;
    }

    private static JsonObject Ladder(JsonObject job, int from, int to)
    {
        job["ladder"] = new JsonObject { ["from"] = from, ["to"] = to, ["step"] = 1 };
        return job;
    }

    private static JsonObject Reprint(JsonObject job, int to, int step)
    {
        (job["reprint"]!["from"], job["reprint"]!["to"], job["reprint"]!["step"]) = (0, to, step);
        return job;
    }

    private static JsonObject Assured(JsonObject job, string spoilage, double confidence = 0.95)
    {
        job["bench"]!["overs"] = new JsonObject { ["mode"] = "assured", ["confidence"] = confidence };
        job["bench"]!["steps"] = Many(1, $$"""{ "name": "s$", "secondsPerCopy": 1, "spoilage": "{{spoilage}}" }""");
        return job;
    }

    private static JsonArray Many(int count, string entry) =>
        new([.. Enumerable.Range(0, count).Select(number => JsonNode.Parse(entry.Replace("$", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)))]);

    private static Job Read(JsonNode job)
    {
        using var document = JsonDocument.Parse(job.ToJsonString());
        return JobReader.Prepare(document.RootElement).Value.Job;
    }
}
