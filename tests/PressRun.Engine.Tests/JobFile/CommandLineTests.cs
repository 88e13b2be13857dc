using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;

namespace PressRun.Engine.Tests.JobFile;

/// <summary>The command line as a process of its own, as people and scripts meet it.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("pressrun-cli").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("estimate")]
    [InlineData("ladder")]
    [InlineData("impose")]
    public async Task Answers_a_job_file_as_json(string command)
    {
        var run = await Run([command, Save(Example.Bytes("job"))]);

        Assert.Equal((0, string.Empty), (run.Status, run.Errors));
        Assert.Equal(Normal(Encoding.UTF8.GetString(Example.Bytes(command))), Normal(run.Output));
    }

    [Fact]
    public async Task Halves_of_a_run_are_answered_as_json_and_told_in_the_table()
    {
        var job = Save(Encoding.UTF8.GetBytes(Example.With("halves", """{ "part": "inside", "second": "blue-text" }""").ToJsonString()));

        var run = await Run(["estimate", job]);
        var table = await Run(["estimate", job, "--table"]);

        Assert.Equal("blue-text", JsonNode.Parse(run.Output)!["halves"]!["second"]!["stock"]!.GetValue<string>());
        Assert.Contains("75 copies on cream-text. The other 75 are on blue-text, weigh", table.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_dash_reads_standard_input()
    {
        var run = await Run(["estimate", "-"], Example.Bytes("job"));

        Assert.Equal(0, run.Status);
        Assert.Equal("305.83", JsonNode.Parse(run.Output)!["landedCost"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("de_DE.UTF-8")]
    [InlineData("pl_PL.UTF-8")]
    public async Task A_comma_locale_changes_no_figure(string locale)
    {
        var run = await Run(["estimate", "-", "--table"], Example.Bytes("job"), locale);

        Assert.Contains("150 copies cost 305.83 USD, that is 2.0389 each.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_job_gives_status_2_its_problems_on_standard_error_and_nothing_else()
    {
        var job = Example.With("edition.parts.1.pages", "29");
        Example.Set(job, "shop.validFrom", "\"2026-12-01\"");
        var run = await Run(["estimate", Save(Encoding.UTF8.GetBytes(job.ToJsonString()))]);

        Assert.Equal((2, string.Empty), (run.Status, run.Output));
        Assert.Contains("$.edition.parts[1].pages is 29: ", run.Errors, StringComparison.Ordinal);
        Assert.Contains("$.shop.validFrom", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"schema\": ")]
    [InlineData("")]
    [InlineData("[1, 2]")]
    public async Task What_is_no_job_file_gives_status_2(string text)
    {
        var run = await Run(["ladder", "-"], Encoding.UTF8.GetBytes(text));

        Assert.Equal((2, string.Empty), (run.Status, run.Output));
        Assert.StartsWith("$", run.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no file", "estimate", "gone.json")]
    [InlineData("name the job file", "estimate")]
    [InlineData("not known", "estimat", "job.json")]
    [InlineData("--tabel", "estimate", "job.json", "--tabel")]
    [InlineData("one job file at a time", "estimate", "a.json", "b.json")]
    public async Task Mistakes_in_the_command_give_status_2_too_and_say_what_to_do(string said, params string[] args)
    {
        var run = await Run(args);

        Assert.Equal((2, string.Empty), (run.Status, run.Output));
        Assert.Contains(said, run.Errors, StringComparison.Ordinal);
        Assert.Contains("pressrun --help", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_teaches_with_an_example_that_works()
    {
        var help = await Run(["--help"]);
        Assert.Equal(0, help.Status);
        Assert.Contains("pressrun sample > job.json", help.Output, StringComparison.Ordinal);

        var sample = await Run(["sample"]);
        foreach (var command in new[] { "estimate", "ladder", "impose", "compare", "reprint" })
        {
            var run = await Run([command, "-", "--table"], Encoding.UTF8.GetBytes(sample.Output));
            Assert.Equal((0, string.Empty), (run.Status, run.Errors));
        }
    }

    private string Save(byte[] bytes)
    {
        var file = Path.Combine(folder, "job.json");
        File.WriteAllBytes(file, bytes);
        return file;
    }

    private static string Normal(string json)
    {
        var node = JsonNode.Parse(json)!;
        foreach (var line in node["lines"]?.AsArray() ?? [])
        {
            line!["label"] = "free";
        }

        return node.ToJsonString();
    }

    private async Task<(int Status, string Output, string Errors)> Run(string[] args, byte[]? input = null, string locale = "C.UTF-8")
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileName(host).StartsWith("dotnet", StringComparison.Ordinal) ? host : "dotnet")
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "pressrun.dll"));
        foreach (var arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        start.Environment["LC_ALL"] = locale;
        using var process = Process.Start(start)!;
        var cancellation = TestContext.Current.CancellationToken;
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var errors = process.StandardError.ReadToEndAsync(cancellation);
        if (input is not null)
        {
            await process.StandardInput.BaseStream.WriteAsync(input, cancellation);
        }

        process.StandardInput.Close();
        await process.WaitForExitAsync(cancellation);
        return (process.ExitCode, await output, await errors);
    }
}
