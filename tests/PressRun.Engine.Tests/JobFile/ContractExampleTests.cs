using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>The worked example of the contract, whose three answers were worked out apart from this program.</summary>
public class ContractExampleTests
{
    [Theory]
    [InlineData(JobQuestion.Estimate, "estimate")]
    [InlineData(JobQuestion.Ladder, "ladder")]
    [InlineData(JobQuestion.Impose, "impose")]
    public void The_worked_example_gives_its_answers_to_the_last_digit(JobQuestion question, string expected)
    {
        using var document = JsonDocument.Parse(Example.Bytes("job"));
        var answer = JobAnswer.To(question, document.RootElement, TestContext.Current.CancellationToken).Value.ToJson(indented: true);

        Assert.Equal(Normal(Example.Bytes(expected)), Normal(answer));
    }

    [Fact]
    public void The_answer_is_the_same_where_a_comma_is_the_point()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("pl-PL");
            The_worked_example_gives_its_answers_to_the_last_digit(JobQuestion.Estimate, "estimate");
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_ladder_that_the_job_does_not_name_is_refused()
    {
        using var document = JsonDocument.Parse(Example.With("ladder", "(gone)").ToJsonString());

        Assert.Equal("$.ladder", Assert.Single(JobAnswer.To(JobQuestion.Ladder, document.RootElement, TestContext.Current.CancellationToken).Problems).Path);
    }

    // Member order, digits and all; only labels and messages are free.
    private static string Normal(byte[] json)
    {
        var node = JsonNode.Parse(json)!;
        foreach (var line in node["lines"]?.AsArray() ?? [])
        {
            line!["label"] = "free";
        }

        return node.ToJsonString(new JsonSerializerOptions { WriteIndented = true });
    }
}
