using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>Every way in which a document may be spoiled at one place.</summary>
internal static class Spoiling
{
    private static readonly string[] Texts = ["\"\"", "\" \"", "\"\\u202ebooks\"", "\"a\\u0007b\"", $"\"{new string('w', 250)}\"", $"\"{new string('w', 3000)}\"", "\"garbage\"", "\"[]\"", "7", "null"];
    private static readonly string[] Days = ["\"0001-01-01\"", "\"9999-12-31\""];
    private static readonly string[] Moments = ["\"0001-01-01T00:00:00.000000Z\"", "\"9999-12-31T23:59:59.999999Z\""];
    private static readonly string[] Numbers = ["0", "-1", "1", "99", "1000000", "2147483647", "-1000000", "1000000000000", "0.0000000001", "1e28", "\"1e12\""];

    /// <summary>Each with what it does.</summary>
    public static IEnumerable<(string What, Action<JsonNode> Spoil)> All(JsonNode document) => Of(document, [], root => root, (_, _) => { });

    /// <summary>Puts a value in a place, such as <c>quotes.0.facts > until</c>, where the facts are a document by themselves.</summary>
    public static void Put(JsonNode root, string place, JsonNode? value)
    {
        if (place.Split(" > ") is [var outer, var inner])
        {
            var document = JsonNode.Parse(Walk(root, outer.Split('.')).GetValue<string>())!;
            Put(document, inner, value);
            value = JsonValue.Create(document.ToJsonString());
            place = outer;
        }

        var path = place.Split('.');
        Set(Walk(root, path[..^1]), path[^1], value);
    }

    /// <summary>The place of every text, as <see cref="Put"/> takes it, with what it says.</summary>
    public static IEnumerable<(string Place, string Text)> TextsOf(JsonNode? node, string place = "")
    {
        if (node?.GetValueKind() == JsonValueKind.String)
        {
            return Inner(node) is { } document ? TextsOf(document, place + " > ") : [(place, node.GetValue<string>())];
        }

        var below = place.Length == 0 || place.EndsWith(' ') ? place : place + ".";
        return node switch
        {
            JsonObject members => members.SelectMany(member => TextsOf(member.Value, below + member.Key)),
            JsonArray items => items.SelectMany((item, index) => TextsOf(item, string.Create(CultureInfo.InvariantCulture, $"{below}{index}"))),
            _ => [],
        };
    }

    private static IEnumerable<(string, Action<JsonNode>)> Of(JsonNode? node, string[] path, Func<JsonNode, JsonNode> open, Action<JsonNode, JsonNode> close)
    {
        switch (node)
        {
            case JsonObject members:
                foreach (var (name, value) in members)
                {
                    yield return ($"{At(path, name)} left out", Change(parent => parent.AsObject().Remove(name)));
                    foreach (var deeper in Below(value, name))
                    {
                        yield return deeper;
                    }
                }

                break;
            case JsonArray items:
                yield return ($"{At(path)} emptied", Change(list => list.AsArray().Clear()));
                foreach (var (index, value) in items.Index())
                {
                    var place = index.ToString(CultureInfo.InvariantCulture);
                    yield return ($"{At(path, place)} twice", Change(list => list.AsArray().Insert(index, value!.DeepClone())));
                    foreach (var deeper in Below(value, place))
                    {
                        yield return deeper;
                    }
                }

                break;
        }

        Action<JsonNode> Change(Action<JsonNode> change) => root =>
        {
            var inner = open(root);
            change(Walk(inner, path));
            close(root, inner);
        };

        IEnumerable<(string, Action<JsonNode>)> Below(JsonNode? value, string name)
        {
            if (value is JsonObject or JsonArray)
            {
                return Of(value, [.. path, name], open, close);
            }

            var replaced = Instead(value).Select(other => ($"{At(path, name)} = {other[..Math.Min(other.Length, 40)]}", Change(parent => Set(parent, name, JsonNode.Parse(other)))));
            return Inner(value) is { } document
                ? replaced.Concat(Of(
                    document, [],
                    root => JsonNode.Parse(Get(Walk(open(root), path), name)!.GetValue<string>())!,
                    (root, inner) => Set(Walk(open(root), path), name, JsonValue.Create(inner.ToJsonString())))
                    .Select(found => ($"{At(path, name)} > {found.Item1}", found.Item2)))
                : replaced;
        }
    }

    // What is frozen stands in the archive as the text of a document.
    private static JsonNode? Inner(JsonNode? value) =>
        value?.GetValueKind() == JsonValueKind.String && value.GetValue<string>() is ['{', ..] text ? JsonNode.Parse(text) : null;

    private static string[] Instead(JsonNode? value) => value?.GetValueKind() switch
    {
        JsonValueKind.Number => Numbers,
        JsonValueKind.True => ["false"],
        JsonValueKind.False => ["true"],
        JsonValueKind.String when value.GetValue<string>() is { Length: 27 } text && text.EndsWith('Z') => Moments,
        JsonValueKind.String when DateOnly.TryParseExact(value.GetValue<string>(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _) => Days,
        JsonValueKind.String when decimal.TryParse(value.GetValue<string>(), NumberStyles.Number, CultureInfo.InvariantCulture, out _) => Numbers,
        _ => Texts,
    };

    private static string At(string[] path, params string[] more) => string.Join('.', path.Concat(more));

    private static JsonNode Walk(JsonNode root, string[] path) => path.Aggregate(root, (node, name) => Get(node, name)!);

    private static JsonNode? Get(JsonNode node, string name) => node is JsonArray list ? list[int.Parse(name, CultureInfo.InvariantCulture)] : node[name];

    private static void Set(JsonNode parent, string name, JsonNode? value)
    {
        if (parent is JsonArray list)
        {
            list[int.Parse(name, CultureInfo.InvariantCulture)] = value;
        }
        else
        {
            parent[name] = value;
        }
    }
}
