using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

/// <summary>What is said where an edition's field cannot be read, and small steps between text and record.</summary>
public static class EditionText
{
    /// <summary>For a field that holds a count.</summary>
    public static string CountRule => Say($"Write a whole number, 0 or more.");

    /// <summary>For a field that holds a length.</summary>
    public static string LengthRule(PressFormat format, bool mayBeZero) => (format.LengthUnit, mayBeZero) switch
    {
        ("in", false) => Say($"Write a length such as 5 1/2 or 140 mm."),
        ("in", true) => Say($"Write a length such as 5 1/2 or 140 mm; 0 is an edge that is not cut."),
        (_, false) => Say($"Write a length such as 148 or 5.5 in."),
        (_, true) => Say($"Write a length such as 148 or 5.5 in; 0 is an edge that is not cut."),
    };

    /// <summary>For a field that holds an amount.</summary>
    public static string AmountRule(PressFormat format) => Say($"Write an amount such as {format.Money(4.50m)}, 0 or more.");

    /// <summary>For the pages of a part.</summary>
    public static string PagesRule(Binding binding, int place, int pages, PressFormat format)
    {
        var nearest = BindingRules.Nearest(binding, place, pages) is [var below, var above] ? Say($"{format.Count(below)} or {format.Count(above)}") : "";
        return binding switch
        {
            Binding.Saddle => Say($"Folded and stapled parts take a multiple of 4 pages, since a sheet folded once has four; the nearest are {nearest}."),
            Binding.Perfect when place == 0 => Say($"The cover of a glued book has {format.Count(BindingRules.Nearest(binding, place, pages)[0])} pages."),
            Binding.Loose => Say($"A part has at least 1 page."),
            _ => Say($"Leaves take a multiple of 2 pages; the nearest are {nearest}."),
        };
    }

    /// <summary>Scale and gauge together; null where neither was used.</summary>
    public static Weighed? Weighed(Mass? mass, Length? thickness) => mass is null && thickness is null ? null : new Weighed(mass, thickness);
}
