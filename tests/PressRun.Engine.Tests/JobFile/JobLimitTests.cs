using System.Text.Json;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>Jobs at the edges of what the reader takes: they are costed or refused, and no product overflows.</summary>
public class JobLimitTests
{
    private static readonly (string Place, string Json)[] Largest =
    [
        ("quantity", "1000000"),
        ("ladder", """{ "from": 999990, "to": 1000000, "step": 1 }"""),
        ("edition.page", """{ "width": "10 m", "height": "10 m" }"""),
        ("shop.sheets.tabloid-plus.width", "\"10 m\""),
        ("shop.sheets.tabloid-plus.height", "\"10 m\""),
        ("edition.parts.1.pages", "9992"),
        ("stocks.cream-text.weight", "\"10000 gsm\""),
        ("stocks.cream-text.caliper", "\"1 m\""),
        ("edition.binding", "\"perfect\""),
        ("edition.binding", "\"loose\""),
        ("edition.binding", "\"side\""),
        ("edition.parts.0.outside", "\"none\""),
        ("edition.trim", """{ "head": "0 in", "foot": "0 in", "foreEdge": "0 in" }"""),
        ("edition.trim", """{ "head": "1 m", "foot": "1 m", "foreEdge": "1 m" }"""),
        ("edition.bleed", "false"),
        ("shop.sheets.tabloid-plus.mixedLayout", "true"),
        ("shop.print.0.steps.0.each", "1000000000000"),
        ("shop.print.1.steps.0.each", "\"999999999999.9999999999999999\""),
        ("shop.paper.1.steps.0.each", "1000000000000"),
        ("shop.finishing.0.per", "\"piece\""),
        ("shop.finishing.0.each", "1000000000000"),
        ("shop.spoilage", "0.9999999999999999999999999999"),
        ("shop.spoilage", "0.999"),
        ("shop.delivers", "\"flatSheets\""),
        ("shop.order.delivery", """{ "perFurtherKg": "1000000000000" }"""),
        ("shop.order.delivery", """{ "steps": [ { "most": "0.0000000001 g", "price": "1000000000000" } ], "perFurtherKg": "0.1234567890123456" }"""),
        ("shop.order.carton", """{ "capacity": "1 g", "tare": "1000 kg" }"""),
        ("shop.order.taxRate", "1"),
        ("shop.order.minimum", "1000000000000"),
        ("shop.setup.part", "1000000000000"),
        ("edition.fixedCosts.0.amount", "1000000000000"),
        ("bench.hourlyRate", "1000000000000"),
        ("bench.steps.0.secondsPerPiece", "1000000"),
        ("bench.steps.3.secondsPerCut", "1000000"),
        ("bench.steps.1.spoilage", "0.99"),
        ("bench.overs.mode", "\"assured\""),
        ("bench.overs", """{ "mode": "assured", "confidence": 0.99999999999999999999 }"""),
        ("bench.consumables.0.perCopy", "1000000000000"),
        ("bench.fittingsMass", "\"1000 kg\""),
        ("edition.weighed", """{ "mass": "1000 kg", "thickness": "1 m" }"""),
        ("mailers.0.mass", "\"1000 kg\""),
        ("mailers.0.price", "1000000000000"),
        ("channels.0.price", "1000000000000"),
        ("channels.1.copiesPerOrder", "1000000"),
        ("channels.2.tradeDiscount", "0.9999999999999999999999999999"),
        ("channels.2.feeRate", "0.9999999999999999999999999999"),
        ("channels.2.mix", "1e-28"),
        ("channels.1.postageCharged", "1000000000000"),
        ("currency", "\"CLF\""),
        ("freeCopies", "1000000"),
    ];

    [Theory]
    [InlineData("quantity", "1000000")]
    [InlineData("edition.parts.1.pages", "9992")]
    [InlineData("shop.print.0.steps.0.each", "1000000000000")]
    [InlineData("bench.hourlyRate", "1000000000000")]
    [InlineData("shop.spoilage", "0.999")]
    [InlineData("edition.weighed", """{ "mass": "1000 kg", "thickness": "1 m" }""")]
    public void One_large_number_is_no_hindrance(string place, string json)
    {
        using var document = JsonDocument.Parse(Example.With(place, json).ToJsonString());

        Assert.True(JobAnswer.To(JobQuestion.Estimate, document.RootElement, TestContext.Current.CancellationToken).Succeeded);
    }

    [Fact]
    public void Each_extreme_alone_and_each_pair_of_them_is_costed_or_refused()
    {
        for (var first = 0; first < Largest.Length; first++)
        {
            for (var second = first; second < Largest.Length; second++)
            {
                AssertAnswered([Largest[first], Largest[second]]);
            }
        }
    }

    [Fact]
    public void All_extremes_that_go_together_are_costed_or_refused()
    {
        for (var without = -1; without < Largest.Length; without++)
        {
            AssertAnswered([.. Largest.Where((_, index) => index != without)]);
            AssertAnswered([.. Largest.Take(without + 1)]);
            AssertAnswered([.. Largest.Skip(without + 1)]);
        }
    }

    private static void AssertAnswered((string Place, string Json)[] changes)
    {
        var job = Example.Job();
        foreach (var (place, json) in changes)
        {
            Example.Set(job, place, json);
        }

        try
        {
            var read = Example.Read(job);
            Assert.True(read.Succeeded, string.Join('\n', read.Problems));
            using var document = JsonDocument.Parse(job.ToJsonString());
            foreach (var question in Enum.GetValues<JobQuestion>())
            {
                var answer = JobAnswer.To(question, document.RootElement, TestContext.Current.CancellationToken);
                Assert.True(answer.Succeeded ? answer.Value.ToJson(indented: false).Length > 2 : answer.Problems.Count > 0);
            }
        }
        catch (Exception problem) when (problem is not OperationCanceledException)
        {
            throw new InvalidOperationException(string.Join(", ", changes), problem);
        }
    }
}
