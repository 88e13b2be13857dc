using PressRun.Data.Import.Tables;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries;

/// <summary>Heads, units and choices of tables as the viewer reads them. The tables themselves, and files, know the English words.</summary>
public static class CellWords
{
    /// <summary>The head of a column.</summary>
    public static string Head(Column column) => SayWhole(column.Title);

    /// <summary>The head of a column with the unit of numbers without one.</summary>
    public static string Head(Column column, CellManners manners) => Unit(column.Kind, manners) is { } unit ? $"{Head(column)} ({unit})" : Head(column);

    /// <summary>The head of a column within a sentence: English then writes it small; what another language does, its head does already.</summary>
    public static string Within(Column column) => Texts.Language.Equals(Translation.Own) ? Head(column).ToLowerInvariant() : Head(column);

    /// <summary>What belongs in a column, and what it means to leave it empty, without a full stop; empty where its head says it.</summary>
    public static string About(Column column) => column.About is not { } about ? ""
        : column.Otherwise is { } otherwise ? Say($"{SayWhole(about)}; left empty it is {otherwise}")
        : SayWhole(about);

    /// <summary>The unit of numbers without one; null where there is none.</summary>
    public static string? Unit(CellKind kind, CellManners manners) => kind.UnitOf(manners) is { } unit ? SayWhole(unit) : null;

    /// <summary>What can be chosen, with the words for it.</summary>
    public static IEnumerable<(string Word, string Told)> Choices(CellKind kind) => kind.Choices.Select(word => (word, Shown(kind, word)));

    /// <summary>The text of a cell as it is shown: only where nothing but certain words is right are they ours to tell.</summary>
    public static string Shown(CellKind kind, string text) => kind.IsClosed && kind.Choices.Contains(text) ? SayWhole(text) : text;

    /// <summary>What was typed, as the table knows it: the choice that is shown so, or else the text itself.</summary>
    public static string Meant(CellKind kind, string typed) =>
        kind.IsClosed ? Choices(kind).FirstOrDefault(choice => choice.Told != choice.Word && string.Equals(choice.Told, typed.Trim(), StringComparison.OrdinalIgnoreCase)).Word ?? typed : typed;
}
