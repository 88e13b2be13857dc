using System.Reflection;
using PressRun.Data;
using PressRun.Engine.Copies;
using PressRun.Engine.Editions;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Files have a word for every value that a program may write into them: without one, an answer that is rarely given would be none.</summary>
public sealed class WordTablesTests
{
    /// <summary>Values that a table leaves out, with the reason.</summary>
    private static readonly Dictionary<(string Table, Enum Value), string> LeftOut = new()
    {
        [("JobWords.PrintedInks", Ink.None)] = "what is not printed has no price",
        [("PrintingShape.Parts", InvoicePart.Rest)] = "it is what the parts that are written leave",
    };

    [Fact]
    public void Every_value_has_a_word_that_is_read_as_that_value()
    {
        var tables = new[] { typeof(JobWords).Assembly, typeof(PressRunDbContext).Assembly }.SelectMany(assembly => assembly.GetTypes())
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(field => field.FieldType is { IsGenericType: true, ContainsGenericParameters: false } kind && kind.GetGenericTypeDefinition() == typeof(Words<>)).ToList();
        Assert.Contains(tables, table => Name(table) == "JobWords.Warnings");
        Assert.Contains(tables, table => Name(table) == "ArchiveWords.Movements");

        var lacks = GetType().GetMethod(nameof(Lacks), BindingFlags.Static | BindingFlags.NonPublic)!;
        var found = tables.SelectMany(table => (IEnumerable<string>)lacks.MakeGenericMethod(table.FieldType.GenericTypeArguments).Invoke(null, [Name(table), table.GetValue(null)])!).ToList();
        Assert.True(found.Count == 0, string.Join(Environment.NewLine, found));
    }

    private static IReadOnlyList<string> Lacks<T>(string table, Words<T> words)
        where T : struct, Enum =>
    [
        .. Enum.GetValues<T>().Where(value => !LeftOut.ContainsKey((table, value)) && !words.All.Any(word => words.Find(word).Equals(value)))
            .Select(value => $"{table} has no word for {typeof(T).Name}.{value}"),
        .. words.All.Where(word => words.Of(words.Find(word)!.Value) != word).Select(word => $"{table}: {word} is read, and written otherwise"),
    ];

    // A property's field is called <Name>k__BackingField.
    private static string Name(FieldInfo field) => $"{field.DeclaringType!.Name}.{(field.Name[0] == '<' ? field.Name[1..field.Name.IndexOf('>', StringComparison.Ordinal)] : field.Name)}";
}
