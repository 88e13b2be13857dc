using System.Text.Json;
using PressRun.JobFile.Results;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>Random jobs with answers reckoned apart from this program; <c>TestData/oracle/README.md</c> says how.</summary>
public class IndependentReckoningTests
{
    // Six decimals are written, so two roundings of one number may differ by one of the last digit.
    private const decimal Tolerance = 0.000001m;

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "TestData", "oracle");

    public static TheoryData<string> Jobs =>
        new(Directory.EnumerateFiles(Folder, "*.json").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_job_gets_the_answers_that_exact_fractions_give(string name)
    {
        using var file = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, $"{name}.json")));
        var job = file.RootElement.GetProperty("job");
        var differences = new List<string>();
        var compared = 0;
        foreach (var question in Enum.GetValues<JobQuestion>())
        {
            var path = char.ToLowerInvariant(question.ToString()[0]) + question.ToString()[1..];
            if (!file.RootElement.TryGetProperty(path, out var expected))
            {
                continue;
            }

            using var answer = JsonDocument.Parse(JobAnswer.To(question, job, TestContext.Current.CancellationToken).Value.ToJson(indented: false));
            Compare(expected, answer.RootElement, path, differences);
            compared++;
        }

        Assert.True(differences.Count == 0, string.Join(Environment.NewLine, differences));
        Assert.True(compared >= 3);
    }

    private static void Compare(JsonElement expected, JsonElement actual, string path, List<string> differences)
    {
        switch (expected.ValueKind, actual.ValueKind)
        {
            case (JsonValueKind.Object, JsonValueKind.Object):
                CompareMembers(expected, actual, path, differences);
                break;
            case (JsonValueKind.Array, JsonValueKind.Array) when expected.GetArrayLength() == actual.GetArrayLength():
                foreach (var (index, item) in actual.EnumerateArray().Index())
                {
                    Compare(expected[index], item, $"{path}[{index}]", differences);
                }

                break;
            case (JsonValueKind.Number, JsonValueKind.Number) when Math.Abs(expected.GetDecimal() - actual.GetDecimal()) <= Tolerance:
                break;
            default:
                if (expected.ValueKind == JsonValueKind.Number || expected.GetRawText() != actual.GetRawText())
                {
                    differences.Add($"{path}: {expected.GetRawText()} expected, {actual.GetRawText()} answered");
                }

                break;
        }
    }

    private static void CompareMembers(JsonElement expected, JsonElement actual, string path, List<string> differences)
    {
        var names = actual.EnumerateObject().Select(member => member.Name).Where(name => name is not ("label" or "message")).ToHashSet(StringComparer.Ordinal);
        names.SymmetricExceptWith(expected.EnumerateObject().Select(member => member.Name));
        differences.AddRange(names.Select(name => $"{path}.{name}: on one side only"));
        foreach (var member in expected.EnumerateObject().Where(member => !names.Contains(member.Name)))
        {
            Compare(member.Value, actual.GetProperty(member.Name), $"{path}.{member.Name}", differences);
        }
    }
}
