using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using PressRun.Engine.Paper;
using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

public class JobWriterTests
{
    [Fact]
    public void Every_job_reads_back_as_it_was_written() => JobFileGen.Job.Sample(job =>
    {
        var written = JobWriter.Write(job);
        var read = JobReader.Read(written);
        Assert.True(read.Succeeded, string.Join('\n', read.Problems));
        Assert.Equal(Encoding.UTF8.GetString(written), Encoding.UTF8.GetString(JobWriter.Write(read.Value)));
        Assert.Equal(job.Edition.Page, read.Value.Edition.Page);
        Assert.Equal(job.Edition.Parts, read.Value.Edition.Parts);
        Assert.Equal(job.Edition.Weighed, read.Value.Edition.Weighed);
        Assert.Equal(job.Stocks, read.Value.Stocks);
        Assert.Equal(job.Shop.Sheets, read.Value.Shop.Sheets);
        Assert.Equal(job.Shop.Finishing, read.Value.Shop.Finishing);
        Assert.Equal(job.Shop.Order.Carton, read.Value.Shop.Order.Carton);
        Assert.Equal(job.Bench.Steps, read.Value.Bench.Steps);
        Assert.Equal(job.Mailers, read.Value.Mailers);
        Assert.Equal(job.Channels, read.Value.Channels);
    }, iter: 2000);

    [Theory]
    [InlineData("""{ "kind": "table", "probabilities": [0.25, 0.5, 0.25], "committed": 3 }""")]
    [InlineData("""{ "kind": "poisson", "mean": 12.5 }""")]
    [InlineData("""{ "kind": "negativeBinomial", "mean": "12.5", "shape": 0.7 }""")]
    [InlineData("""{ "kind": "history", "periods": [9, 14, 0], "horizonPeriods": 6, "uplift": 1.25, "priorShape": 0.5, "priorRate": 0.25 }""")]
    [InlineData("""{ "kind": "opinion", "low": -5, "likely": 40, "high": 100.5 }""")]
    public void What_is_asked_for_beyond_the_costing_reads_back_too(string demand)
    {
        var sample = JsonNode.Parse(JobResources.SampleJob)!.AsObject();
        sample["reprint"]!["demand"] = JsonNode.Parse(demand);
        sample["compare"]!["halves"] = JsonNode.Parse("""[ { "part": "cover", "first": "matt-board", "second": "natural-text" } ]""");
        var job = Example.Read(sample).Value;
        var written = JobWriter.Write(job);
        var again = JobReader.Read(written).Value;

        Assert.Equal(Encoding.UTF8.GetString(written), Encoding.UTF8.GetString(JobWriter.Write(again)));
        Assert.Equal(job.Reprint!.Demand.GetType(), again.Reprint!.Demand.GetType());
        Assert.Equal(job.Reprint.Cash, again.Reprint.Cash);
        Assert.Equal(job.Compare!.Halves, again.Compare!.Halves);
        Assert.Equal(job.Compare.Quantities, again.Compare.Quantities);
        Assert.True(JobSchemaTests.Takes(written));
    }

    [Fact]
    public void The_worked_example_keeps_its_meaning()
    {
        var job = JobReader.Read(Example.Bytes("job")).Value;
        var again = JobReader.Read(JobWriter.Write(job)).Value;

        Assert.Equal(PaperWeight.FromBasisWeight(80m, PaperCategory.Cover), again.Stocks[0].Weight);
        Assert.Equal(job.Stocks, again.Stocks);
        Assert.Equal(job.Channels, again.Channels);
        Assert.Equal(job.Ladder, again.Ladder);
    }

    [Fact]
    public void Values_are_written_as_a_person_would()
    {
        var text = Encoding.UTF8.GetString(JobWriter.Write(JobReader.Read(Example.Bytes("job")).Value, indented: false));

        Assert.Contains("\"weight\":\"80 lb cover\",\"caliper\":\"230 um\"", text, StringComparison.Ordinal);
        Assert.Contains("\"page\":{\"width\":\"139.7 mm\",\"height\":\"215.9 mm\"}", text, StringComparison.Ordinal);
        Assert.Contains("\"each\":\"0.40\"", text, StringComparison.Ordinal);
        Assert.Contains("\"perCopy\":\"0.004\"", text, StringComparison.Ordinal);
        Assert.Contains("\"feeRate\":0.0275", text, StringComparison.Ordinal);
        Assert.Contains("\"price\":\"9.00\"", text, StringComparison.Ordinal);
    }
}
