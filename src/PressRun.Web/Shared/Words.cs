using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>Words of the trade for what the engine names.</summary>
public static class Words
{
    /// <summary>Such as <c>second printing</c>.</summary>
    public static string Printing(int printing) => printing switch
    {
        1 => Say($"first printing"),
        2 => Say($"second printing"),
        3 => Say($"third printing"),
        4 => Say($"fourth printing"),
        5 => Say($"fifth printing"),
        6 => Say($"sixth printing"),
        7 => Say($"seventh printing"),
        8 => Say($"eighth printing"),
        9 => Say($"ninth printing"),
        10 => Say($"tenth printing"),
        _ => Say($"printing {printing}"),
    };

    /// <summary>Such as <c>Ada, Bo and Cy</c>; nothing of none.</summary>
    public static string Together(IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        return names.Count < 2 ? string.Concat(names) : Say($"{string.Join(", ", names.SkipLast(1))} and {names[^1]}");
    }

    /// <summary>What stands in the way, each sentence once.</summary>
    public static string Standing(IEnumerable<Problem> problems) => string.Join(" ", problems.Select(problem => SayWhole(problem.Rule)).Distinct());

    /// <summary>Such as <c>folded and stapled</c>.</summary>
    public static string Of(Binding binding) => binding switch
    {
        Binding.Saddle => Say($"folded and stapled"),
        Binding.Side => Say($"stapled at the side"),
        Binding.Perfect => Say($"glued spine"),
        _ => Say($"loose leaves"),
    };

    /// <summary>Of a book that nobody binds yet: what is missing in its cost.</summary>
    public static string NobodyBinds(Binding binding) => binding switch
    {
        Binding.Saddle => Say($"Nobody folds or staples this yet: its cost is missing."),
        Binding.Side => Say($"Nobody staples this yet: its cost is missing."),
        _ => Say($"Nobody glues this yet: its cost is missing."),
    };

    /// <summary>As the rest of a sentence: <c>is folded and stapled</c>, <c>has a glued spine</c>.</summary>
    public static string Held(Binding binding) => binding switch
    {
        Binding.Perfect => Say($"has a glued spine"),
        Binding.Loose => Say($"is made of loose leaves"),
        _ => Say($"is {Of(binding)}"),
    };

    /// <summary>Such as <c>black</c>.</summary>
    public static string Of(Ink ink) => ink switch
    {
        Ink.Black => Say($"black"),
        Ink.Colour => Say($"colour"),
        _ => Say($"unprinted"),
    };

    /// <summary>Pages as a maker counts them: <c>52 pages, 4 of them the cover</c>.</summary>
    /// <param name="pages">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Of(PageCount pages, Func<decimal, string> count) =>
        pages.OfCover == 0 ? Pages(pages.All, count) : Say($"{Pages(pages.All, count)}, {count(pages.OfCover)} of them the cover");

    /// <summary>Both sides of a part in words.</summary>
    public static string Inks(Ink outside, Ink inside) => outside == inside
        ? Of(outside)
        : Say($"{Of(outside)} outside, {Of(inside)} inside");

    /// <summary>The trade's name of a kind of work at the table, such as <c>collate</c>.</summary>
    public static string Of(WorkKind kind) => kind switch
    {
        WorkKind.CutApart => Say($"cut apart"),
        WorkKind.Score => Say($"score"),
        WorkKind.Collate => Say($"collate"),
        WorkKind.Jog => Say($"jog"),
        WorkKind.TrimSpine => Say($"trim the spine"),
        WorkKind.Staple => Say($"staple"),
        WorkKind.Glue => Say($"glue"),
        WorkKind.Fold => Say($"fold"),
        WorkKind.Press => Say($"press"),
        WorkKind.Trim => Say($"trim"),
        WorkKind.Pack => Say($"pack"),
        _ => Say($"your own step"),
    };

    /// <summary>What copies of a range do, which may be one number alone: <c>45 copies cost</c>, <c>45 to 60 copies cost</c>.</summary>
    /// <param name="from">First number.</param>
    /// <param name="to">Last number.</param>
    /// <param name="count">How a number is written.</param>
    public static string CopiesCost(int from, int to, Func<decimal, string> count) =>
        from == to ? Say(from, $"{count(from)} copy costs", $"{count(from)} copies cost") : Say($"{count(from)} to {count(to)} copies cost");

    /// <summary>Such as <c>12 copies</c>.</summary>
    /// <param name="copies">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Copies(long copies, Func<decimal, string> count) => Say(copies, $"{count(copies)} copy", $"{count(copies)} copies");

    /// <summary>Such as <c>52 pages</c>.</summary>
    /// <param name="pages">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Pages(long pages, Func<decimal, string> count) => Say(pages, $"{count(pages)} page", $"{count(pages)} pages");

    /// <summary>Such as <c>3 days</c>.</summary>
    /// <param name="days">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Days(long days, Func<decimal, string> count) => Say(days, $"{count(days)} day", $"{count(days)} days");

    /// <summary>Such as <c>3 weeks</c>.</summary>
    /// <param name="weeks">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Weeks(decimal weeks, Func<decimal, string> count) => Say((long)weeks, $"{count(weeks)} week", $"{count(weeks)} weeks");

    /// <summary>Such as <c>2 titles</c>.</summary>
    /// <param name="titles">The count.</param>
    /// <param name="count">Writes a count.</param>
    public static string Titles(long titles, Func<decimal, string> count) => Say(titles, $"{count(titles)} title", $"{count(titles)} titles");

    /// <summary>Such as <c>2.5 hours</c>.</summary>
    /// <param name="hours">To a tenth.</param>
    /// <param name="format">How figures are written.</param>
    public static string Hours(decimal hours, PressFormat format)
    {
        ArgumentNullException.ThrowIfNull(format);
        var shown = decimal.Round(hours, 1, MidpointRounding.AwayFromZero);
        return Say(shown, $"{format.Number(shown, 1)} hour", $"{format.Number(shown, 1)} hours");
    }
}
