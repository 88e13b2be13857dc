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
    public async Task Halves_of_a_run_are_answered_as_the_command_line_does()
    {
        await using var host = await ApiHost.Start();
        var job = ApiHost.Sample();
        job["halves"] = JsonNode.Parse("""{ "part": "cover", "second": "natural-text" }""");
        using var answer = await host.Post("/api/v1/estimate", job);

        using var document = JsonDocument.Parse(job.ToJsonString());
        var expected = JobAnswer.To(JobQuestion.Estimate, document.RootElement, TestContext.Current.CancellationToken).Value.ToJson(indented: false);
        Assert.Equal(Encoding.UTF8.GetString(expected), await Text(answer));
        Assert.Equal("natural-text", JsonNode.Parse(expected)!["halves"]!["second"]!["stock"]!.GetValue<string>());
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

    [Fact(Timeout = 300_000)]
    public async Task A_short_job_is_answered_beside_a_long_one_and_a_long_one_that_nobody_waits_for_any_more_makes_room()
    {
        var settings = new Dictionary<string, string?> { ["MostAtOnce"] = "1", ["MostLongAtOnce"] = "1", ["MostWaiting"] = "0", ["LongestSeconds"] = "600" };
        await using var host = await ApiHost.Start(settings.ToDictionary(setting => "PressRun:Api:" + setting.Key, setting => setting.Value), new ShortTurnTime(isOver: false));
        using var away = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var endless = host.Post("/api/v1/ladder", EndlessLadder(), away.Token);
        await Eventually(async () =>
        {
            // It may have been turned away itself, while the other one had its turn.
            endless = endless.IsCompleted ? host.Post("/api/v1/ladder", EndlessLadder(), away.Token) : endless;
            return await StatusOf(host, "/api/v1/ladder", LongLadder()) == HttpStatusCode.ServiceUnavailable;
        });

        // The turn of the short ones is taken for as long as the long ladder is read.
        await Eventually(async () => await StatusOf(host, "/api/v1/estimate", ApiHost.Sample()) == HttpStatusCode.OK);
        Assert.Equal(HttpStatusCode.OK, await StatusOf(host, "/api/v1/ladder", ApiHost.Sample()));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await StatusOf(host, "/api/v1/ladder", LongLadder()));
        Assert.False(endless.IsCompleted);
        await away.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => endless);
        await Eventually(async () => await StatusOf(host, "/api/v1/ladder", LongLadder()) == HttpStatusCode.OK);
    }

    [Fact(Timeout = 300_000)]
    public async Task What_was_taken_for_short_and_is_not_gives_its_turn_back_and_has_one_among_the_long_ones()
    {
        var settings = new Dictionary<string, string?> { ["MostAtOnce"] = "1", ["MostLongAtOnce"] = "1", ["MostWaiting"] = "0", ["LongestSeconds"] = "600" };
        await using var host = await ApiHost.Start(settings.ToDictionary(setting => "PressRun:Api:" + setting.Key, setting => setting.Value), new ShortTurnTime(isOver: true));
        Assert.Equal(HttpStatusCode.OK, await StatusOf(host, "/api/v1/ladder", ApiHost.Sample()));

        using var away = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var endless = host.Post("/api/v1/ladder", EndlessLadder(), away.Token);
        await Eventually(async () =>
        {
            endless = endless.IsCompleted ? host.Post("/api/v1/ladder", EndlessLadder(), away.Token) : endless;
            return await StatusOf(host, "/api/v1/ladder", LongLadder()) == HttpStatusCode.ServiceUnavailable
                && await StatusOf(host, "/api/v1/estimate", ApiHost.Sample()) == HttpStatusCode.OK;
        });
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await StatusOf(host, "/api/v1/ladder", ApiHost.Sample()));
        Assert.Equal(HttpStatusCode.OK, await StatusOf(host, "/api/v1/estimate", ApiHost.Sample()));
        await away.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => endless);
    }

    private static async Task Eventually(Func<Task<bool>> holds)
    {
        while (!await holds())
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }

    private static async Task<HttpStatusCode> StatusOf(ApiHost host, string path, JsonNode job)
    {
        using var answer = await host.Post(path, job);
        return answer.StatusCode;
    }

    // A million quantities of sixty parts, each of which looks at a hundred sheets: hours of work for a test, were it done.
    private static JsonObject EndlessLadder()
    {
        var job = LongLadder();
        job["ladder"] = JsonNode.Parse("""{ "from": 1, "to": 1000000, "step": 1000 }""");
        var parts = job["edition"]!["parts"]!.AsArray();
        var part = parts[1]!;
        part["pages"] = 4;
        while (parts.Count < 60)
        {
            parts.Add(part.DeepClone());
        }

        var shop = job["shop"]!;
        var (sheetId, sheet) = shop["sheets"]!.AsObject().First();
        foreach (var number in Enumerable.Range(0, 99))
        {
            shop["sheets"]![$"sheet {number}"] = sheet!.DeepClone();
            foreach (var prices in new[] { shop["print"]!.AsArray(), shop["paper"]!.AsArray() })
            {
                foreach (var price in prices.Where(price => price!["sheet"]!.GetValue<string>() == sheetId).Select(price => price!.DeepClone()).ToList())
                {
                    price["sheet"] = $"sheet {number}";
                    prices.Add(price);
                }
            }
        }

        return job;
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

    /// <summary>A clock by which a short job's turn is over at once, or never, however busy the machine is.</summary>
    private sealed class ShortTurnTime(bool isOver) : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            if (dueTime <= TimeSpan.Zero || dueTime >= TimeSpan.FromSeconds(1))
            {
                return base.CreateTimer(callback, state, dueTime, period);
            }

            if (isOver)
            {
                callback(state);
            }

            return base.CreateTimer(callback, state, Timeout.InfiniteTimeSpan, period);
        }
    }

    /// <summary>A clock whose every delay is over at once.</summary>
    private sealed class HurriedTime : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, dueTime == Timeout.InfiniteTimeSpan ? dueTime : TimeSpan.Zero, period);
    }
}
