using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Copies;
using PressRun.Data.People;
using PressRun.JobFile;

namespace PressRun.Browser.Tests.People;

/// <summary>What a key opens over HTTP, and what opens nothing in its place. All of it happens in a press of its own.</summary>
public sealed class KeyTests(PeopleApp people)
{
    // Whoever guesses keys writes no more into the log than what programs that bar addresses read.
    [Fact]
    public async Task A_wrong_key_is_told_to_the_log_in_one_line()
    {
        await people.ReadyAsync();
        using var guesser = new HttpClient { BaseAddress = people.App.Address };
        guesser.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", "guessed");
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(guesser.GetAsync(new Uri("api/v1/printings", UriKind.Relative))));

        await Eventually.HoldsAsync(() => Task.FromResult(people.App.Said.Contains(": wrong key", StringComparison.Ordinal)), "the log tells of it");
        Assert.DoesNotContain("not authenticated", people.App.Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_that_writes_adds_a_title_and_writes_a_line_once_however_often_it_is_sent()
    {
        using var program = await ProgramAsync(mayWrite: true);
        using var added = await program.PostAsync(new Uri("api/v1/titles", UriKind.Relative), Job());
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        var made = (await added.Content.ReadFromJsonAsync<JsonNode>())!;
        var printing = made["printing"]!.GetValue<Guid>();
        Assert.StartsWith($"/titles/{made["slug"]}/", added.Headers.Location!.ToString(), StringComparison.Ordinal);
        var printings = (await program.GetFromJsonAsync<JsonArray>(new Uri("api/v1/printings", UriKind.Relative)))!;
        Assert.Contains(printings, one => one!["id"]!.GetValue<Guid>() == printing && one["printing"]!.GetValue<int>() == 1);

        var line = Guid.NewGuid();
        foreach (var _ in new[] { "first", "again" })
        {
            using var written = await PutAsync(program, line, Printed(printing, 40));
            Assert.Equal((HttpStatusCode.OK, 40), (written.StatusCode, (await written.Content.ReadFromJsonAsync<JsonNode>())!["copies"]!.GetValue<int>()));
        }

        Assert.Equal(40, (await people.Stored.Services.GetRequiredService<CopiesLedgerStore>().OnHandAsync(people.Other, printing))!.Value.OnHand);
        Assert.Equal(HttpStatusCode.Conflict, await StatusAsync(PutAsync(program, line, Printed(printing, 41))));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await StatusAsync(PutAsync(program, Guid.NewGuid(), Printed(printing, -1))));
        Assert.Equal(HttpStatusCode.BadRequest, await StatusAsync(PutAsync(program, Guid.NewGuid(), """{ "printing": 7 }""")));
        Assert.Equal(HttpStatusCode.BadRequest, await StatusAsync(PutAsync(program, Guid.NewGuid(), Printed(printing, 1).Replace("{", """{ "copies": 2,""", StringComparison.Ordinal))));
        using var nonsense = new StringContent("""{ "quantity": 0 }""", Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await StatusAsync(program.PostAsync(new Uri("api/v1/titles", UriKind.Relative), nonsense)));
    }

    // RFC 9110, 5.5: a header is ASCII; RFC 3986, 2.1: other letters stand in an address as their bytes.
    [Fact]
    public async Task A_title_with_letters_beyond_latin_is_made_and_told_where_it_is()
    {
        using var program = await ProgramAsync(mayWrite: true);
        var job = JsonNode.Parse(JobResources.SampleJob)!;
        job["edition"]!["title"] = "\u05D0\u05D1 \u0416\u0443\u043A";
        using var body = new StringContent(job.ToJsonString(), Encoding.UTF8, "application/json");
        using var added = await program.PostAsync(new Uri("api/v1/titles", UriKind.Relative), body);

        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        var slug = (await added.Content.ReadFromJsonAsync<JsonNode>())!["slug"]!.GetValue<string>();
        Assert.Equal($"/titles/{Uri.EscapeDataString(slug)}/1", added.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task A_title_that_is_sent_again_with_its_key_is_made_once()
    {
        using var program = await ProgramAsync(mayWrite: true);
        var key = Guid.NewGuid().ToString();
        var answers = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => SendAsync(key)));

        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Created], answers.Select(answer => answer.Status).Order());
        Assert.Single(answers.Select(answer => answer.Made["printing"]!.GetValue<Guid>()).Distinct());
        Assert.Single(answers.Select(answer => answer.Made["slug"]!.GetValue<string>()).Distinct());
        Assert.NotEqual(answers[0].Made["slug"]!.GetValue<string>(), (await SendAsync(Guid.NewGuid().ToString())).Made["slug"]!.GetValue<string>());
        Assert.Equal(HttpStatusCode.BadRequest, (await SendAsync("again")).Status);
        // A program that never filled it in would else have all its titles taken for one.
        Assert.Equal(HttpStatusCode.BadRequest, (await SendAsync(Guid.Empty.ToString())).Status);

        async Task<(HttpStatusCode Status, JsonNode Made)> SendAsync(string once)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "api/v1/titles") { Content = Job() };
            request.Headers.Add("Idempotency-Key", once);
            using var answer = await program.SendAsync(request);
            return (answer.StatusCode, (await answer.Content.ReadFromJsonAsync<JsonNode>())!);
        }
    }

    [Fact]
    public async Task A_key_writes_nothing_of_another_press_and_nothing_at_all_where_it_only_reads()
    {
        using var writer = await ProgramAsync(mayWrite: true);
        using var reader = await ProgramAsync(mayWrite: false);
        var theirs = (await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing)).Edition.Id;
        var before = await people.Stored.ArchiveAsync();

        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync(PutAsync(writer, Guid.NewGuid(), Printed(theirs, 1))));
        Assert.DoesNotContain(theirs.ToString(), await writer.GetStringAsync(new Uri("api/v1/printings", UriKind.Relative)), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(reader.GetAsync(new Uri("api/v1/printings", UriKind.Relative))));
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync(reader.PostAsync(new Uri("api/v1/titles", UriKind.Relative), Job())));
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync(PutAsync(reader, Guid.NewGuid(), Printed(theirs, 1))));
        Assert.Equal(before, await people.Stored.ArchiveAsync());
    }

    [Fact]
    public async Task Neither_a_cookie_nor_a_key_that_stands_elsewhere_than_in_the_header_opens_it()
    {
        await people.ReadyAsync();
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        var key = await KeyAsync(mayWrite: true);
        foreach (var path in new[] { "api/v1/titles", $"api/v1/titles?access_token={key}&key={key}" })
        {
            Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(owner.AskAsync("POST", path, Job())));
        }

        using var cookies = new HttpClient(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = people.App.Address };
        cookies.DefaultRequestHeaders.Add("Cookie", $"pressrun={key}; Authorization=Bearer {key}");
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(cookies.PostAsync(new Uri("api/v1/titles", UriKind.Relative), Job())));
        using var program = await ProgramAsync(mayWrite: true);
        Assert.NotEqual(HttpStatusCode.OK, await StatusAsync(program.GetAsync(new Uri("shelf", UriKind.Relative))));
    }

    private static StringContent Job() => new(Encoding.UTF8.GetString(JobResources.SampleJob), Encoding.UTF8, "application/json");

    private static string Printed(Guid printing, int copies) => $$"""{ "printing": "{{printing}}", "day": "2026-03-02", "kind": "printed", "copies": {{copies}}, "amount": "88.00", "note": " by a program\u00a0" }""";

    private static Task<HttpResponseMessage> PutAsync(HttpClient program, Guid id, string line) =>
        program.PutAsync(new Uri($"api/v1/movements/{id}", UriKind.Relative), new StringContent(line, Encoding.UTF8, "application/json"));

    private static async Task<HttpStatusCode> StatusAsync(Task<HttpResponseMessage> asking)
    {
        using var answer = await asking;
        return answer.StatusCode;
    }

    private async Task<string> KeyAsync(bool mayWrite)
    {
        await people.ReadyAsync();
        return await people.Stored.Services.GetRequiredService<ApiKeyStore>().MakeAsync(people.Other, "a program", mayWrite);
    }

    private async Task<HttpClient> ProgramAsync(bool mayWrite)
    {
        var key = await KeyAsync(mayWrite);
        var program = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = people.App.Address };
        program.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return program;
    }
}
