using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PressRun.Web.Tests.Api;

public partial class ApiDescriptionTests
{
    [Fact]
    public async Task The_description_names_every_question_with_an_example_that_works()
    {
        await using var host = await ApiHost.Start();
        var description = await Description(host);

        Assert.StartsWith("3.1", description["openapi"]!.GetValue<string>(), StringComparison.Ordinal);
        foreach (var path in new[] { "/api/v1/estimate", "/api/v1/ladder", "/api/v1/impose", "/api/v1/compare", "/api/v1/reprint" })
        {
            var operation = description["paths"]![path]!["post"]!;
            var example = operation["requestBody"]!["content"]!["application/json"]!["examples"]!["sample"]!["value"]!;
            using var answer = await host.Post(path, example);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.True(JsonNode.DeepEquals(
                JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)),
                operation["responses"]!["200"]!["content"]!["application/json"]!["example"]));
            Assert.NotNull(operation["responses"]!["422"]!["content"]!["application/problem+json"]);
        }

        Assert.NotNull(description["paths"]!["/api/v1/job.schema.json"]!["get"]);
    }

    [Fact]
    public async Task Every_reference_of_the_description_leads_somewhere()
    {
        await using var host = await ApiHost.Start();
        var description = await Description(host);
        var references = new HashSet<string>();
        Collect(description, references);

        Assert.Contains("#/components/schemas/Job", references);
        Assert.Contains("#/components/schemas/length", references);
        foreach (var reference in references)
        {
            JsonNode? at = description;
            foreach (var step in reference[2..].Split('/'))
            {
                at = at?[step];
            }

            Assert.True(at is not null, reference);
        }
    }

    [Fact]
    public async Task The_page_asks_no_other_host_for_anything()
    {
        await using var host = await ApiHost.Start();
        using var answer = await host.Client.GetAsync("/api/", TestContext.Current.CancellationToken);
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.DoesNotMatch(ForeignSource(), html);
        Assert.DoesNotContain("fonts.", html, StringComparison.Ordinal);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("connect-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);

        var scripts = ScriptSource().Matches(html).Select(match => match.Groups[1].Value).ToList();
        Assert.NotEmpty(scripts);
        foreach (var script in scripts)
        {
            using var served = await host.Client.GetAsync(new Uri(new Uri("http://localhost/api/"), script), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, served.StatusCode);
        }
    }

    [GeneratedRegex("""(src|href|url)\s*[=(:]\s*["']?(https?:)?//""", RegexOptions.IgnoreCase)]
    private static partial Regex ForeignSource();

    [GeneratedRegex("""<script[^>]*\ssrc="([^"]+)"[^>]*>""")]
    private static partial Regex ScriptSource();

    private static async Task<JsonNode> Description(ApiHost host) =>
        JsonNode.Parse(Encoding.UTF8.GetString(await host.Client.GetByteArrayAsync("/api/v1/openapi.json", TestContext.Current.CancellationToken)))!;

    private static void Collect(JsonNode? node, HashSet<string> references)
    {
        if (node is JsonObject members)
        {
            foreach (var (name, value) in members)
            {
                if (name == "$ref")
                {
                    references.Add(value!.GetValue<string>());
                }

                Collect(value, references);
            }
        }
        else if (node is JsonArray items)
        {
            foreach (var item in items)
            {
                Collect(item, references);
            }
        }
    }
}
