using System.Text;
using System.Text.Json.Nodes;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>Ten thousand spoilt job files, the same ones every time.</summary>
public class JobFileFuzzTests
{
    private const int Files = 10_000;

    [Fact]
    public void Every_spoilt_file_is_costed_or_clearly_refused()
    {
        var spoiler = new JobFileSpoiler(20261125);
        var (accepted, costed, refused) = (0, 0, 0);
        for (var file = 0; file < Files; file++)
        {
            var bytes = spoiler.Next();
            try
            {
                var read = JobReader.Read(bytes);
                if (!read.Succeeded)
                {
                    refused++;
                    AssertClear(read.Problems);
                    continue;
                }

                accepted++;
                Assert.True(JobSchemaTests.Takes(WithoutMark(bytes)), "The schema refuses what the reader takes.");
                costed += Cost(read.Value) ? 1 : 0;
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                throw new InvalidOperationException($"File {file}:\n{Encoding.UTF8.GetString(bytes)}", problem);
            }
        }

        // A fuzz that refuses everything, or takes everything, shows nothing.
        Assert.InRange(accepted, Files / 20, Files * 19 / 20);
        Assert.InRange(costed, Files / 50, accepted);
        Assert.True(refused > Files / 10);
    }

    private static bool Cost(Job job)
    {
        var prepared = PreparedJob.Prepare(job);
        if (!prepared.Succeeded)
        {
            AssertClear(prepared.Problems);
            return false;
        }

        // Long work is not what is looked for here, so it is given up; the work itself says no otherwise.
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        foreach (var question in Enum.GetValues<JobQuestion>().Where(question => question != JobQuestion.Estimate))
        {
            try
            {
                var asked = JobAnswer.To(question, prepared.Value, patience.Token);
                Assert.True(asked.Succeeded ? asked.Value.ToJson(indented: false).Length > 2 : asked.Problems.Count > 0);
            }
            catch (OperationCanceledException)
            {
            }
        }

        var estimate = JobAnswer.To(JobQuestion.Estimate, prepared.Value, TestContext.Current.CancellationToken);
        if (!estimate.Succeeded)
        {
            AssertClear(estimate.Problems);
            return false;
        }

        var answer = JsonNode.Parse(estimate.Value.ToJson(indented: false))!;
        Assert.Equal(job.Quantity, answer["quantity"]!.GetValue<int>());
        Assert.Equal(Encoding.UTF8.GetString(JobWriter.Write(job)), Encoding.UTF8.GetString(JobWriter.Write(JobReader.Read(JobWriter.Write(job)).Value)));
        return true;
    }

    private static void AssertClear(IReadOnlyList<Problem> problems)
    {
        Assert.NotEmpty(problems);
        foreach (var problem in problems)
        {
            Assert.StartsWith("$", problem.Path, StringComparison.Ordinal);
            Assert.True(problem.Rule.Length > 10 && problem.Rule[^1] is '.' or '?', problem.ToString());
        }
    }

    private static ReadOnlySpan<byte> WithoutMark(byte[] bytes) => bytes.AsSpan().StartsWith("\uFEFF"u8) ? bytes.AsSpan(3) : bytes;
}
