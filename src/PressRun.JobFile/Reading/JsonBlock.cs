using System.Globalization;
using System.Text.Json;

namespace PressRun.JobFile.Reading;

/// <summary>Whether a member may be left out.</summary>
public enum Need
{
    /// <summary>It may be left out, or be null, which is the same.</summary>
    May,

    /// <summary>It must be there.</summary>
    Must,
}

/// <summary>
/// One object of a document while it is read: each member is asked for by name, and <see cref="Close"/> refuses by name whatever was not.
/// Problems go to the list it was opened with; a member that is missing or wrong comes back as null.
/// </summary>
public sealed partial class JsonBlock
{
    private readonly List<(string Name, JsonElement Value)> members = [];
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);

    private JsonBlock(JsonPath path, ProblemList problems)
    {
        Path = path;
        Problems = problems;
    }

    /// <summary>Where it stands.</summary>
    public JsonPath Path { get; }

    /// <summary>Where its problems go.</summary>
    public ProblemList Problems { get; }

    /// <summary>Its members in order, the first of each name.</summary>
    public IReadOnlyList<(string Name, JsonElement Value)> Members => members;

    /// <summary>Opens an object. A key that stands twice is refused; the first counts.</summary>
    /// <param name="element">What should be an object.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="rule">What it should be, as a sentence, for the case that it is none.</param>
    /// <returns>Null where it is no object.</returns>
    public static JsonBlock? Open(JsonElement element, JsonPath path, ProblemList problems, string rule)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, element, rule);
            return null;
        }

        var block = new JsonBlock(path, problems);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var member in element.EnumerateObject())
        {
            if (names.Add(member.Name))
            {
                block.members.Add((member.Name, member.Value));
            }
            else
            {
                problems.Add(path.Member(member.Name), member.Value, $"The key \"{Excerpt.Of(member.Name)}\" stands twice in one object; keep one of them.");
            }
        }

        return block;
    }

    /// <summary>True where the member is there and not null.</summary>
    public bool Has(string name) => Find(name) is { ValueKind: not JsonValueKind.Null };

    /// <summary>Takes a member as it is, or null where it is left out.</summary>
    /// <param name="name">Its key.</param>
    /// <param name="need">Whether it may be left out.</param>
    /// <param name="rule">What it should be, as a sentence, for the case that it is missing.</param>
    public JsonElement? Take(string name, Need need, string rule)
    {
        asked.Add(name);
        if (Find(name) is { ValueKind: not JsonValueKind.Null } element)
        {
            return element;
        }

        if (need == Need.Must)
        {
            Problems.Add(Path.Member(name), (string?)null, "This is required and is missing. " + rule);
        }

        return null;
    }

    /// <summary>Opens a member that is an object itself.</summary>
    public JsonBlock? Block(string name, Need need, string rule) =>
        Take(name, need, rule) is { } element ? Open(element, Path.Member(name), Problems, rule) : null;

    /// <summary>Reads a member that is an array, item by item; items that come back as null are left out.</summary>
    /// <returns>Empty where the member is left out or is no array.</returns>
    public IReadOnlyList<T> List<T>(string name, Need need, string rule, Func<JsonElement, JsonPath, T?> read, int most = int.MaxValue)
        where T : class
    {
        var list = new List<T>();
        foreach (var (element, path) in Items(name, need, rule, most: most))
        {
            if (read(element, path) is { } item)
            {
                list.Add(item);
            }
        }

        return list;
    }

    /// <summary>Opens a member that is an object of entries by their ids.</summary>
    /// <returns>Null where the member is left out, is no object or has too many entries.</returns>
    public JsonBlock? Entries(string name, Need need, string rule, int most = int.MaxValue) =>
        Block(name, need, rule) is { } block && CheckCount(block.Path, block.Members.Count, most) ? block : null;

    /// <summary>The items of a member that is an array, each with its path.</summary>
    /// <param name="name">Its key.</param>
    /// <param name="need">Whether it may be left out.</param>
    /// <param name="rule">What it should be, as a sentence.</param>
    /// <param name="atLeastOne">True where an array without items is refused.</param>
    /// <param name="most">Most items.</param>
    public IReadOnlyList<(JsonElement Value, JsonPath Path)> Items(
        string name, Need need, string rule, bool atLeastOne = false, int most = int.MaxValue)
    {
        var items = new List<(JsonElement Value, JsonPath Path)>();
        if (Take(name, need, rule) is not { } element)
        {
            return items;
        }

        var path = Path.Member(name);
        if (element.ValueKind != JsonValueKind.Array || (atLeastOne && element.GetArrayLength() == 0))
        {
            Problems.Add(path, element, rule);
            return items;
        }

        if (!CheckCount(path, element.GetArrayLength(), most))
        {
            return items;
        }

        foreach (var item in element.EnumerateArray())
        {
            items.Add((item, path.Item(items.Count)));
        }

        return items;
    }

    /// <summary>Refuses every member that was not asked for, by name.</summary>
    public void Close()
    {
        foreach (var (name, value) in members)
        {
            if (!asked.Contains(name))
            {
                var meant = !Problems.IsFull && Nearest.To(name, asked) is { } near ? $" Did you mean \"{near}\"?" : string.Empty;
                Problems.Add(Path.Member(name), value, $"The key \"{Excerpt.Of(name)}\" is not known here.{meant}");
            }
        }
    }

    private bool CheckCount(JsonPath path, int count, int most)
    {
        if (count > most)
        {
            Problems.Add(path, string.Create(CultureInfo.InvariantCulture, $"{count} entries"), string.Create(CultureInfo.InvariantCulture, $"Write at most {most} entries here."));
        }

        return count <= most;
    }

    private JsonElement? Find(string name)
    {
        foreach (var (key, value) in members)
        {
            if (key == name)
            {
                return value;
            }
        }

        return null;
    }
}
