using PressRun.Engine.Bench;
using PressRun.Engine.Editions;

namespace PressRun.Web.Shared;

/// <summary>Words of the trade for what the engine names.</summary>
public static class Words
{
    private static readonly string[] Ordinals =
        ["", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    /// <summary>Such as <c>second printing</c>.</summary>
    public static string Printing(int printing) => printing < Ordinals.Length ? $"{Ordinals[printing]} printing" : $"printing {printing}";

    /// <summary>Such as <c>Ada, Bo and Cy</c>; nothing of none.</summary>
    public static string Together(IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        return names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";
    }

    /// <summary>Such as <c>folded and stapled</c>.</summary>
    public static string Of(Binding binding) => binding switch
    {
        Binding.Saddle => "folded and stapled",
        Binding.Side => "stapled at the side",
        Binding.Perfect => "glued spine",
        _ => "loose leaves",
    };

    /// <summary>Of a book that nobody binds yet: what is missing in its cost.</summary>
    public static string NobodyBinds(Binding binding) => binding switch
    {
        Binding.Saddle => "Nobody folds or staples this yet: its cost is missing.",
        Binding.Side => "Nobody staples this yet: its cost is missing.",
        _ => "Nobody glues this yet: its cost is missing.",
    };

    /// <summary>As the rest of a sentence: <c>is folded and stapled</c>, <c>has a glued spine</c>.</summary>
    public static string Held(Binding binding) => binding switch
    {
        Binding.Perfect => "has a glued spine",
        Binding.Loose => "is made of loose leaves",
        _ => "is " + Of(binding),
    };

    /// <summary>Such as <c>black</c>.</summary>
    public static string Of(Ink ink) => ink switch
    {
        Ink.Black => "black",
        Ink.Colour => "colour",
        _ => "unprinted",
    };

    /// <summary>Pages as a maker counts them: <c>52 pages, 4 of them the cover</c>.</summary>
    /// <param name="pages">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Of(PageCount pages, Func<decimal, string> count) =>
        Many(count(pages.All), pages.All, "page", "pages") + (pages.OfCover > 0 ? $", {count(pages.OfCover)} of them the cover" : "");

    /// <summary>Both sides of a part in words.</summary>
    public static string Inks(Ink outside, Ink inside) => outside == inside
        ? Of(outside)
        : $"{Of(outside)} outside, {Of(inside)} inside";

    /// <summary>The trade's name of a kind of work at the table, such as <c>collate</c>.</summary>
    public static string Of(WorkKind kind) => kind switch
    {
        WorkKind.CutApart => "cut apart",
        WorkKind.Score => "score",
        WorkKind.Collate => "collate",
        WorkKind.Jog => "jog",
        WorkKind.TrimSpine => "trim the spine",
        WorkKind.Staple => "staple",
        WorkKind.Glue => "glue",
        WorkKind.Fold => "fold",
        WorkKind.Press => "press",
        WorkKind.Trim => "trim",
        WorkKind.Pack => "pack",
        _ => "your own step",
    };

    /// <summary>What copies of a range do, which may be one number alone: <c>45 copies cost</c>, <c>45 to 60 copies cost</c>.</summary>
    /// <param name="from">First number.</param>
    /// <param name="to">Last number.</param>
    /// <param name="count">How a number is written.</param>
    public static string CopiesCost(int from, int to, Func<decimal, string> count) =>
        from == to ? Many(count(from), from, "copy costs", "copies cost") : $"{count(from)} to {count(to)} copies cost";

    /// <summary>One thing or many: <c>1 copy</c>, <c>12 copies</c>.</summary>
    public static string Many(string count, long number, string one, string many) => $"{count} {(number == 1 ? one : many)}";
}
