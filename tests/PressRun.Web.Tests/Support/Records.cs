using PressRun.Data.Titles;

namespace PressRun.Web.Tests.Support;

/// <summary>Stored rows for tests, of the same invented book.</summary>
public static class Records
{
    public static EditionRecord Edition()
    {
        var edition = ARun.Edition();
        return new EditionRecord(
            Guid.NewGuid(), Guid.NewGuid(), edition.Title, edition.Printing, ARun.Day, 100, 40, 6m, 0, edition.Page, edition.Binding, edition.Bleed, edition.Trim,
            edition.Fold, edition.Weighed, [.. edition.Parts.Select(part => new EditionPart(Guid.NewGuid(), part))], edition.FixedCosts, false, 1);
    }
}
