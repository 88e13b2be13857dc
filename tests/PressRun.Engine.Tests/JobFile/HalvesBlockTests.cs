using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

public class HalvesBlockTests
{
    private const string Halves = """{ "part": "inside", "second": "blue-text" }""";

    [Fact]
    public void A_job_with_halves_is_answered_as_the_comparison_of_the_same_halves_and_written_as_it_was_read()
    {
        var json = Example.With("halves", Halves);
        Example.Set(json, "compare", """{ "halves": [{ "part": "inside", "first": "cream-text", "second": "blue-text" }] }""");

        var estimate = Answer(JobQuestion.Estimate, json);
        var compared = Answer(JobQuestion.Compare, json)["halves"]![0]!;

        Assert.Equal(compared["landedCost"]!.GetValue<string>(), estimate["landedCost"]!.GetValue<string>());
        Assert.Equal(compared["second"]!["copy"]!.ToJsonString(), estimate["halves"]!["second"]!["copy"]!.ToJsonString());
        Assert.Equal(
            ("inside", "cream-text", 75, "blue-text", 75),
            (Text("part"), Text("first", "stock"), Count("first"), Text("second", "stock"), Count("second")));
        var job = Example.Read(json).Value;
        Assert.Equal(job.SecondHalf, JobReader.Read(JobWriter.Write(job)).Value.SecondHalf);
        Assert.Equal(JobWriter.Write(job), JobWriter.Write(JobReader.Read(JobWriter.Write(job)).Value));

        string Text(params string[] path) => path.Aggregate(estimate["halves"]!, (node, name) => node[name]!).GetValue<string>();

        int Count(string half) => estimate["halves"]![half]!["copies"]!.GetValue<int>();
    }

    [Fact]
    public void An_answer_without_halves_has_no_word_of_them() => Assert.Null(Answer(JobQuestion.Estimate, Example.Job())["halves"]);

    [Theory]
    [InlineData("""{ "part": "centrefold", "second": "blue-text" }""", "$.halves.part")]
    [InlineData("""{ "part": "inside", "second": "velvet" }""", "$.halves.second")]
    [InlineData("""{ "part": "inside" }""", "$.halves.second")]
    [InlineData("""{ "part": "inside", "second": "blue-text", "third": "silk-cover" }""", "$.halves.third")]
    [InlineData("""[ "inside" ]""", "$.halves")]
    public void A_block_that_cannot_be_understood_is_refused_by_its_path(string block, string path) =>
        Assert.Equal(path, Assert.Single(Example.Read(Example.With("halves", block)).Problems).Path);

    private static JsonNode Answer(JobQuestion question, JsonObject json)
    {
        using var document = JsonDocument.Parse(Encoding.UTF8.GetBytes(json.ToJsonString()));
        return JsonNode.Parse(JobAnswer.To(question, document.RootElement, TestContext.Current.CancellationToken).Value.ToJson(indented: false))!;
    }
}
