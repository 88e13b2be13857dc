using System.Text.Json.Nodes;
using PressRun.JobFile;

namespace PressRun.Web.Api;

/// <summary>How a call about a press is described: what is sent, and what comes back.</summary>
/// <param name="Sends">An example of the body; null for none.</param>
/// <param name="IsJob">True where the body is a job file.</param>
/// <param name="Status">Status of the answer.</param>
/// <param name="Answers">An example of the answer.</param>
internal sealed record PressCall(JsonNode? Sends, bool IsJob, string Status, JsonNode Answers)
{
    private const string Printing = "01890000-0000-7000-8000-000000000001";

    public static PressCall Printings { get; } = new(
        null, false, "200", JsonNode.Parse($$"""[{ "id": "{{Printing}}", "title": "Ink and Weather", "slug": "ink-and-weather", "printing": 1, "printedOn": "2026-03-02" }]""")!);

    public static PressCall Title { get; } = new(
        JsonNode.Parse(JobResources.SampleJob), true, "201",
        JsonNode.Parse($$"""{ "slug": "ink-and-weather", "printing": "{{Printing}}", "plan": "01890000-0000-7000-8000-000000000002", "newStocks": ["Cream book 90"], "newShop": null }""")!);

    public static PressCall Movement { get; } = new(
        JsonNode.Parse($$"""{ "printing": "{{Printing}}", "day": "2026-03-02", "kind": "sold", "copies": 2, "amount": "18.00", "channel": null, "note": "at the door" }"""), false, "200",
        JsonNode.Parse($$"""{ "id": "01890000-0000-7000-8000-000000000003", "printing": "{{Printing}}", "day": "2026-03-02", "kind": "sold", "copies": -2, "amount": "18.00", "channel": null, "note": "at the door", "writtenAt": "2026-03-02T18:00:00+00:00" }""")!);
}
