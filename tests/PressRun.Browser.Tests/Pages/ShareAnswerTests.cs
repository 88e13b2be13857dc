using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Quotes;

namespace PressRun.Browser.Tests.Pages;

/// <summary>What a link answers over HTTP, whatever it is asked.</summary>
public sealed class ShareAnswerTests(SampleApp sample)
{
    [Fact]
    public async Task Whatever_is_answered_beneath_a_link_stays_out_of_indexes_caches_and_referrers_and_is_a_calm_page()
    {
        using var reader = new HttpPerson(sample.Address, "192.0.2.60");
        var (secret, ended) = (await sample.Stored.ShareAsync(3, "Gil Weir"), await EndedAsync());
        (string Method, string Path, HttpStatusCode Status)[] cases =
        [
            ("GET", $"q/{secret}", HttpStatusCode.OK), ("HEAD", $"q/{secret}", HttpStatusCode.OK), ("GET", $"q/{secret}?copies=60", HttpStatusCode.OK), ("GET", $"q/{secret}/quote.pdf", HttpStatusCode.OK),
            ("GET", $"q/{secret}?copies=many", HttpStatusCode.UnprocessableEntity), ("GET", $"q/{secret}/agree", HttpStatusCode.NotFound), ("GET", $"q/{secret}/a/b", HttpStatusCode.NotFound), ("GET", $"q//{secret}", HttpStatusCode.NotFound), ("GET", $"Q//{secret}/quote.pdf", HttpStatusCode.NotFound), ("GET", "q", HttpStatusCode.NotFound),
            ("GET", "q/nothing", HttpStatusCode.NotFound), ("GET", $"q/{ended}", HttpStatusCode.Gone), ("GET", $"q/{ended}/quote.pdf", HttpStatusCode.Gone), ("POST", $"q/{ended}/remark", HttpStatusCode.Gone),
            ("POST", $"q/{secret}/remark", HttpStatusCode.UnprocessableEntity), ("POST", $"q/{secret}/burn", HttpStatusCode.NotFound), ("PUT", $"q/{secret}", HttpStatusCode.NotFound), ("DELETE", $"q/{secret}/agree", HttpStatusCode.NotFound), ("POST", $"q/{secret}", HttpStatusCode.NotFound), ("POST", "q", HttpStatusCode.NotFound), ("PATCH", $"q/{secret}/a/b", HttpStatusCode.NotFound),
        ];
        foreach (var (method, path, status) in cases)
        {
            using var answer = await reader.AskAsync(method, path, method == "POST" ? new FormUrlEncodedContent([]) : null);
            await IsHiddenAsync(answer, status, $"{method} {path}");
        }

        foreach (var (body, type, status) in new[]
        {
            ("{}", "application/json", HttpStatusCode.UnsupportedMediaType), ("words=" + new string('a', 70_000), "application/x-www-form-urlencoded", HttpStatusCode.RequestEntityTooLarge),
            ("no part", "multipart/form-data; boundary=x", HttpStatusCode.BadRequest),
        })
        {
            using var content = new ByteArrayContent(System.Text.Encoding.ASCII.GetBytes(body));
            content.Headers.TryAddWithoutValidation("Content-Type", type);
            using var answer = await reader.AskAsync("POST", $"q/{secret}/remark", content);
            await IsHiddenAsync(answer, status, type);
        }

        for (var guess = 0; guess < 30; guess++)
        {
            using var missed = await reader.AskAsync("GET", "q/nothing");
        }

        using var slowed = await reader.AskAsync("GET", "q/nothing");
        await IsHiddenAsync(slowed, HttpStatusCode.TooManyRequests, "the one guess too many");
    }

    [Theory]
    [InlineData("agree", "You have agreed")]
    [InlineData("turn-down", "You have turned it down")]
    [InlineData("ask", "has been told which quantity")]
    [InlineData("remark", "Your remark stands below")]
    public async Task An_address_that_says_that_something_was_done_is_not_believed(string said, string words)
    {
        var secret = await sample.Stored.ShareAsync(2, "Ivy Lund");
        using var reader = new HttpPerson(sample.Address);
        using var answer = await reader.AskAsync("GET", $"q/{secret}?said={said}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.DoesNotContain(words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("quotes/1/quote.pdf")]
    [InlineData("quotes/1/quote.csv")]
    [InlineData("sales/export.csv")]
    [InlineData("shelf")]
    public async Task What_is_of_a_press_is_kept_by_no_cache(string path)
    {
        using var maker = new HttpPerson(sample.Address);
        using var answer = await maker.AskAsync("GET", path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    [Fact]
    public async Task Asking_for_the_head_alone_says_the_same_and_changes_nothing()
    {
        var secret = await sample.Stored.ShareAsync(2, "Hal Rook");
        using var reader = new HttpPerson(sample.Address);
        var before = await ChangesAsync();
        foreach (var path in new[] { $"q/{secret}", $"q/{secret}?copies=60", $"q/{secret}/quote.pdf", $"q/{secret}/nothing" })
        {
            using var whole = await reader.AskAsync("GET", path);
            using var head = await reader.AskAsync("HEAD", path);
            Assert.Equal((whole.StatusCode, whole.Content.Headers.ContentType), (head.StatusCode, head.Content.Headers.ContentType));
            Assert.Equal(whole.Content.Headers.ContentLength, head.Content.Headers.ContentLength);
            Assert.Empty(await head.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        }

        Assert.Equal(before, await ChangesAsync());

        async Task<int> ChangesAsync() => (await Quotes.FindAsync(sample.Stored.Press.Id, 2))!.Changes;
    }

    [Fact]
    public async Task What_is_sent_by_a_link_that_has_ended_meanwhile_comes_back()
    {
        var secret = await EndedAsync();
        using var reader = new HttpPerson(sample.Address);
        using var form = new FormUrlEncodedContent([new("name", "Ivo <i>Tarn"), new("words", "A long & careful <remark>.")]);
        using var answer = await reader.AskAsync("POST", $"q/{secret}/remark", form);
        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
        Assert.Contains("A long &amp; careful &lt;remark&gt;.</textarea>", page, StringComparison.Ordinal);
        Assert.Contains("Ivo &lt;i&gt;Tarn", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_worked_out_for_one_request_is_worked_out_so_often_in_a_minute_and_the_page_opens_all_the_same()
    {
        var (busy, other) = (await sample.Stored.ShareAsync(3, "Jo Fell"), await sample.Stored.ShareAsync(3, "Kit Moor"));
        using var reader = new HttpPerson(sample.Address);
        var answers = new List<HttpStatusCode>();
        for (var ask = 0; ask < 62 && !answers.Contains(HttpStatusCode.TooManyRequests); ask++)
        {
            answers.Add(await StatusAsync(ask % 2 == 0 ? $"q/{busy}?copies=60" : $"q/{busy}/quote.pdf"));
        }

        Assert.True(answers.Count > 30, "Thirty within a minute are answered.");
        Assert.Equal(HttpStatusCode.TooManyRequests, answers[^1]);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync($"q/{busy}"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync($"q/{other}?copies=60"));

        async Task<HttpStatusCode> StatusAsync(string path)
        {
            using var answer = await reader.AskAsync("HEAD", path);
            return answer.StatusCode;
        }
    }

    // A refused form has the page worked out around it, and a quantity that is asked for is worked out like one that is tried.
    [Theory]
    [InlineData("remark")]
    [InlineData("agree")]
    [InlineData("ask")]
    public async Task A_form_is_taken_so_often_in_a_minute_comes_back_after_that_and_the_page_opens_all_the_same(string form)
    {
        var secret = await sample.Stored.ShareAsync(3, $"Lou Tern, {form}");
        using var reader = new HttpPerson(sample.Address);
        for (var sent = 0; sent < 30; sent++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SendAsync()).Status);
        }

        var (status, page) = await SendAsync();
        Assert.Equal(HttpStatusCode.TooManyRequests, status);
        Assert.Contains("A long remark.</textarea>", page, StringComparison.Ordinal);
        using var opened = await reader.AskAsync("GET", $"q/{secret}");
        using var tried = await reader.AskAsync("HEAD", $"q/{secret}?copies=60");
        Assert.Equal((HttpStatusCode.OK, form == "ask" ? HttpStatusCode.TooManyRequests : HttpStatusCode.OK), (opened.StatusCode, tried.StatusCode));

        async Task<(HttpStatusCode Status, string Page)> SendAsync()
        {
            using var filled = new FormUrlEncodedContent([new("name", ""), new("copies", "60"), new("words", "A long remark.")]);
            using var answer = await reader.AskAsync("POST", $"q/{secret}/{form}", filled);
            return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
        }
    }

    [Fact]
    public async Task A_quantity_that_was_asked_for_by_a_link_is_asked_for_once()
    {
        var secret = await sample.Stored.ShareAsync(3, "Ola Brandt");
        using var reader = new HttpPerson(sample.Address);
        foreach (var (copies, said, words) in new[] { ("60", "ask", "has been told which quantity"), ("60", "asked", "This quantity has been asked for by this link already."), ("61", "ask", "has been told which quantity") })
        {
            using var form = new FormUrlEncodedContent([new("name", "Ola Brandt"), new("copies", copies)]);
            using var answer = await reader.AskAsync("POST", $"q/{secret}/ask", form);
            Assert.Equal((copies, HttpStatusCode.SeeOther, $"q/{secret}?said={said}#said"), (copies, answer.StatusCode, answer.Headers.Location!.OriginalString.TrimStart('/')));
            Assert.Contains(words, await PageAsync(reader, $"q/{secret}?said={said}"), StringComparison.Ordinal);
        }

        Assert.Equal([60, 61], (await SaidAsync(secret, QuoteEventKind.AskedFor)).Select(asked => asked.Quantity));
    }

    [Theory]
    [InlineData("Someone Different", true)]
    [InlineData("Ada Brandt", true)]
    [InlineData("ola  brándt", false)]
    [InlineData("Brandt, Ola", false)]
    [InlineData("OlaBrandt", false)]
    [InlineData("Ola B. Brandt", false)]
    public async Task Whoever_agrees_by_another_name_than_the_links_is_asked_once_whether_they_mean_it(string name, bool isAsked)
    {
        var (waiting, secret) = (await sample.Stored.ShareAsync(3, "Somebody who waits"), await sample.Stored.ShareAsync(3, "Ola Brandt"));
        Assert.NotEqual(waiting, secret);
        var quote = (await Quotes.FindAsync(sample.Stored.Press.Id, 3))!.Quote;
        using var reader = new HttpPerson(sample.Address);

        using var first = await AgreeAsync("");
        var page = await first.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(isAsked ? HttpStatusCode.UnprocessableEntity : HttpStatusCode.SeeOther, first.StatusCode);
        if (isAsked)
        {
            Assert.Empty(await SaidAsync(secret, QuoteEventKind.Agreed));
            Assert.Contains($"This link was made for Ola Brandt. Agree as {name}?", page, StringComparison.Ordinal);
            Assert.Contains($"""name="as" value="{name}">""", page, StringComparison.Ordinal);
            using var other = await AgreeAsync("Yet Another");
            Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
            using var meant = await AgreeAsync(name);
            Assert.Equal(HttpStatusCode.SeeOther, meant.StatusCode);
        }

        Assert.Equal([name], (await SaidAsync(secret, QuoteEventKind.Agreed)).Select(agreed => agreed.By));

        async Task<HttpResponseMessage> AgreeAsync(string meant)
        {
            using var form = new FormUrlEncodedContent(
                [new("name", name), new("copies", quote.Quantity.ToString(System.Globalization.CultureInfo.InvariantCulture)), new("fingerprint", Convert.ToHexStringLower(quote.Fingerprint)), new("as", meant)]);
            return await reader.AskAsync("POST", $"q/{secret}/agree", form);
        }
    }

    [Theory]
    [InlineData("remark")]
    [InlineData("turn-down")]
    public async Task Words_that_are_too_many_come_back_whole_with_their_number(string form)
    {
        var secret = await sample.Stored.ShareAsync(3, "Ola Brandt");
        using var reader = new HttpPerson(sample.Address);
        Assert.DoesNotContain("maxlength=\"2000\"", await PageAsync(reader, $"q/{secret}"), StringComparison.Ordinal);

        var words = string.Concat(Enumerable.Repeat("Could it be a little lighter? ", 74));
        using var filled = new FormUrlEncodedContent([new("name", "Ola Brandt"), new("words", words)]);
        using var answer = await reader.AskAsync("POST", $"q/{secret}/{form}", filled);

        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("That has 2,219 characters, and 2,000 go at most; shorten it by 219.", page, StringComparison.Ordinal);
        Assert.Contains(words.Trim(), page, StringComparison.Ordinal);
        Assert.Empty(await SaidAsync(secret, form == "remark" ? QuoteEventKind.Remarked : QuoteEventKind.TurnedDown));
    }

    // Unicode CLDR: all of these write a comma before the cents.
    [Fact]
    public async Task Whoever_asks_in_ever_more_languages_is_answered_and_has_no_more_pages_set_than_a_few()
    {
        var secret = await sample.Stored.ShareAsync(3, "Mo Shoal");
        var cents = ((await Quotes.FindAsync(sample.Stored.Press.Id, 3))!.Quote.Landed % 1m).ToString("F2", System.Globalization.CultureInfo.InvariantCulture)[2..];
        string[] languages = ["fr", "de", "es", "it", "nl", "pl", "sv", "da", "fi", "cs", "pt-PT", "tr", "uk", "ro"];
        var written = new List<char>();
        using var http = new HttpClient { BaseAddress = sample.Address };
        foreach (var language in languages)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"q/{secret}");
            request.Headers.Add("Accept-Language", language);
            using var answer = await http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            written.Add(page.Contains($",{cents}<", StringComparison.Ordinal) ? ',' : page.Contains($".{cents}<", StringComparison.Ordinal) ? '.' : '?');
        }

        Assert.Equal(new string(',', 10) + new string('.', 4), new string([.. written]));
    }

    private QuoteStore Quotes => sample.Stored.Services.GetRequiredService<QuoteStore>();

    private async Task<IReadOnlyList<QuoteEvent>> SaidAsync(string secret, QuoteEventKind kind)
    {
        var look = (await sample.Stored.Services.GetRequiredService<SharedQuoteStore>().LookAsync(Data.People.Secret.Hash(secret)))!;
        return [.. (await Quotes.FindAsync(sample.Stored.Press.Id, 3))!.Events.Where(said => said.LinkId == look.LinkId && said.Kind == kind)];
    }

    private static async Task<string> PageAsync(HttpPerson reader, string path)
    {
        using var answer = await reader.AskAsync("GET", path);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    private async Task<string> EndedAsync()
    {
        var secret = await sample.Stored.ShareAsync(3, "Ended " + Guid.NewGuid());
        var press = sample.Stored.Press;
        var look = (await sample.Stored.Services.GetRequiredService<SharedQuoteStore>().LookAsync(Data.People.Secret.Hash(secret)))!;
        await Quotes.EndAsync(press.Id, look.QuoteId, look.LinkId, press.Name);
        return secret;
    }

    private static async Task IsHiddenAsync(HttpResponseMessage answer, HttpStatusCode status, string asked)
    {
        Assert.Equal((asked, status), (asked, answer.StatusCode));
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Contains("noindex", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl is { NoStore: true, Private: true }, asked);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("<script", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("traceId", text, StringComparison.Ordinal);
        if (answer.Content.Headers.ContentType?.MediaType == "text/html" && answer.RequestMessage!.Method != HttpMethod.Head)
        {
            Assert.Contains("<h1>", text, StringComparison.Ordinal);
        }

        Assert.True(answer.Content.Headers.ContentLength > 0, $"{asked} says something.");
    }
}
