using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>The page about the job file: each block it shows is one that is taken, and each answer the one that is given to it.</summary>
public sealed partial class JobFilePageTests
{
    private static readonly List<string> Shown = [.. Listing().Matches(Page("docs/job-file.md")).Select(match => match.Groups[1].Value)];

    [Theory]
    [InlineData("compare", JobQuestion.Compare)]
    [InlineData("reprint", JobQuestion.Reprint)]
    public void A_block_and_the_answer_after_it_belong_together(string block, JobQuestion question)
    {
        var job = JsonNode.Parse(JobResources.SampleJob)!;
        var place = Shown.FindIndex(text => text.StartsWith($"\"{block}\":", StringComparison.Ordinal));
        job[block] = Member(Shown[place])[block]!.DeepClone();
        var answer = Shown.Skip(place).First(text => text.StartsWith('{'));

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(answer), JsonNode.Parse(Answer(question, job))));
    }

    [Fact]
    public void Every_kind_of_demand_that_is_shown_is_understood()
    {
        var demands = Shown.Where(text => text.StartsWith("\"demand\":", StringComparison.Ordinal)).Select(text => Member(text)["demand"]!).ToList();

        Assert.Equal(["table", "poisson", "negativeBinomial", "opinion"], demands.Select(demand => demand["kind"]!.GetValue<string>()));
        Assert.All(demands, demand =>
        {
            var job = JsonNode.Parse(JobResources.SampleJob)!;
            job["reprint"]!["demand"] = demand.DeepClone();
            Assert.NotEmpty(Answer(JobQuestion.Reprint, job));
        });
    }

    [Fact]
    public void Every_key_of_both_blocks_is_on_the_page()
    {
        var page = Page("docs/job-file.md");
        using var schema = JsonDocument.Parse(JobResources.Schema);
        foreach (var definition in new[] { "halves", "compare", "reprint", "demand" })
        {
            Assert.All(KeysOf(schema.RootElement, definition), key => Assert.Contains($"`{key}`", page, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_warning_is_on_the_page_by_its_code()
    {
        var page = Page("docs/job-file.md");
        Assert.All(Enum.GetValues<WarningCode>(), code => Assert.Contains($"| `{JobWords.Warnings.Of(code)}` |", page, StringComparison.Ordinal));
    }

    private static List<string> KeysOf(JsonElement schema, string definition)
    {
        var keys = new List<string>();
        Collect(schema.GetProperty("$defs").GetProperty(definition));
        Assert.NotEmpty(keys);
        return keys;

        void Collect(JsonElement element)
        {
            if (element.ValueKind == JsonValueKind.Object)
            {
                foreach (var member in element.EnumerateObject())
                {
                    if (member.NameEquals("properties"))
                    {
                        keys.AddRange(member.Value.EnumerateObject().Select(property => property.Name));
                    }

                    Collect(member.Value);
                }
            }
            else if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray())
                {
                    Collect(item);
                }
            }
        }
    }

    private static string Answer(JobQuestion question, JsonNode job)
    {
        using var document = JsonDocument.Parse(job.ToJsonString());
        return Encoding.UTF8.GetString(JobAnswer.To(question, document.RootElement, TestContext.Current.CancellationToken).Value.ToJson(indented: false));
    }

    private static JsonNode Member(string text) => JsonNode.Parse("{" + text + "}")!;

    private static string Page(string path)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "PressRun.sln")))
        {
            folder = folder.Parent;
        }

        return File.ReadAllText(Path.Combine(folder.FullName, path));
    }

    [GeneratedRegex("```json\n(.*?)\n```", RegexOptions.Singleline)]
    private static partial Regex Listing();
}
