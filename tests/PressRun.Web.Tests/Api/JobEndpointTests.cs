using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Web.Tests.Api;

public class JobEndpointTests
{
    [Theory]
    [InlineData("estimate", JobQuestion.Estimate)]
    [InlineData("ladder", JobQuestion.Ladder)]
    [InlineData("impose", JobQuestion.Impose)]
    [InlineData("compare", JobQuestion.Compare)]
    [InlineData("reprint", JobQuestion.Reprint)]
    public async Task Answers_as_the_command_line_does(string path, JobQuestion question)
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Post("/api/v1/" + path, JobResources.SampleJob, "application/json");

        using var document = JsonDocument.Parse(JobResources.SampleJob);
        var expected = JobAnswer.To(question, document.RootElement, TestContext.Current.CancellationToken).Value.ToJson(indented: false);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal(Encoding.UTF8.GetString(expected), await Text(answer));
    }

    [Fact]
    public async Task A_refused_job_file_comes_back_with_every_problem()
    {
        await using var host = await ApiHost.Start();
        var job = ApiHost.Sample();
        job["quantity"] = 0;
        job["edition"]!["parts"]![1]!["pages"] = -20;
        job["editon"] = 1;
        using var answer = await host.Post("/api/v1/estimate", job);

        var problem = await Problem(answer, HttpStatusCode.UnprocessableEntity);
        Assert.Equal(
            [("$.edition.parts[1].pages", "-20"), ("$.editon", "1"), ("$.quantity", "0")],
            problem["errors"]!.AsArray().Select(error => (error!["path"]!.GetValue<string>(), error["value"]!.GetValue<string>())).Order());
        Assert.All(problem["errors"]!.AsArray(), error => Assert.NotEmpty(error!["rule"]!.GetValue<string>()));
    }

    [Fact]
    public async Task A_rule_of_the_costing_is_refused_likewise()
    {
        await using var host = await ApiHost.Start();
        var job = ApiHost.Sample();
        job["edition"]!["parts"]![1]!["pages"] = 22;
        using var answer = await host.Post("/api/v1/impose", job);

        var problem = await Problem(answer, HttpStatusCode.UnprocessableEntity);
        Assert.Equal("$.edition.parts[1].pages", problem["errors"]![0]!["path"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("{ \"schema\": ")]
    [InlineData("")]
    [InlineData("\u0000")]
    public async Task A_body_that_is_no_json_is_malformed(string body)
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Post("/api/v1/estimate", Encoding.UTF8.GetBytes(body), "application/json");

        var problem = await Problem(answer, HttpStatusCode.BadRequest);
        Assert.Contains("line 1", problem["errors"]![0]!["rule"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_body_that_is_too_large_is_not_read_to_its_end(bool saysItsLength)
    {
        await using var host = await ApiHost.Start();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/estimate") { Content = new ByteArrayContent(new byte[JobRules.MostBytes + 1]) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.TransferEncodingChunked = !saysItsLength;
        using var answer = await host.Client.SendAsync(request, TestContext.Current.CancellationToken);

        await Problem(answer, HttpStatusCode.RequestEntityTooLarge);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("application/json; charset=utf-16")]
    public async Task A_body_of_another_kind_is_turned_away(string mediaType)
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Post("/api/v1/estimate", JobResources.SampleJob, mediaType);

        await Problem(answer, HttpStatusCode.UnsupportedMediaType);
    }

    [Theory]
    [InlineData("application/json")]
    [InlineData("application/json; charset=utf-8")]
    [InlineData("application/vnd.example+json")]
    [InlineData(null)]
    public async Task Json_by_any_of_its_names_is_taken(string? mediaType)
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Post("/api/v1/estimate", JobResources.SampleJob, mediaType);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task Other_methods_and_addresses_say_so()
    {
        await using var host = await ApiHost.Start();
        using var get = await host.Client.GetAsync("/api/v1/estimate", TestContext.Current.CancellationToken);
        await Problem(get, HttpStatusCode.MethodNotAllowed);
        Assert.Equal(["POST"], get.Content.Headers.Allow);

        using var nothing = await host.Post("/api/v1/nothing", ApiHost.Sample());
        await Problem(nothing, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Serves_the_schema()
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Client.GetAsync("/api/v1/job.schema.json", TestContext.Current.CancellationToken);

        Assert.Equal("application/schema+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(JobResources.Schema, await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_job_that_takes_too_long_is_given_up()
    {
        await using var host = await ApiHost.Start(time: new HurriedTime());
        using var answer = await host.Post("/api/v1/ladder", LongLadder());

        var problem = await Problem(answer, HttpStatusCode.ServiceUnavailable);
        Assert.Equal("urn:pressrun:problem:took-too-long", problem["type"]!.GetValue<string>());
    }

    [Fact]
    public async Task More_jobs_than_are_taken_on_are_turned_away_and_the_others_answered()
    {
        await using var host = await ApiHost.Start(new Dictionary<string, string?> { ["PressRun:Api:MostAtOnce"] = "1", ["PressRun:Api:MostWaiting"] = "1", ["PressRun:Api:LongestSeconds"] = "600" });
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => host.Post("/api/v1/ladder", LongLadder()))));

        Assert.Contains(answers, answer => answer.StatusCode == HttpStatusCode.OK);
        Assert.All(answers.Where(answer => answer.StatusCode != HttpStatusCode.OK), answer => Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode));
        var turnedAway = answers.First(answer => answer.StatusCode == HttpStatusCode.ServiceUnavailable);
        Assert.NotNull(turnedAway.Headers.RetryAfter);
        foreach (var answer in answers)
        {
            answer.Dispose();
        }
    }

    private static JsonObject LongLadder()
    {
        var job = ApiHost.Sample();
        job["ladder"] = JsonNode.Parse("""{ "from": 1, "to": 400001, "step": 1000 }""");
        return job;
    }

    private static async Task<JsonNode> Problem(HttpResponseMessage answer, HttpStatusCode status)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = JsonNode.Parse(await Text(answer))!;
        Assert.Equal((int)status, problem["status"]!.GetValue<int>());
        Assert.NotEmpty(problem["title"]!.GetValue<string>());
        Assert.StartsWith("urn:pressrun:problem:", problem["type"]!.GetValue<string>(), StringComparison.Ordinal);
        return problem;
    }

    private static Task<string> Text(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    /// <summary>A clock whose every delay is over at once.</summary>
    private sealed class HurriedTime : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, dueTime == Timeout.InfiniteTimeSpan ? dueTime : TimeSpan.Zero, period);
    }
}
