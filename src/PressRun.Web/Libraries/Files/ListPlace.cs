using PressRun.Data.Import.Notes;
using PressRun.Data.Shops;
using PressRun.Engine.Costing;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>Which list the prices of a file come into: the one that is open, which keeps its day, or a new one with a first day of its own, beside which the open one stays as it is.</summary>
/// <param name="lists">The shop's lists, latest first.</param>
/// <param name="open">The one that is open.</param>
/// <param name="isBlank">True where it holds no prices and no plan goes by it: then there is nothing to keep, and it begins when the file says.</param>
/// <param name="today">Today.</param>
public sealed class ListPlace(IReadOnlyList<PriceListHead> lists, PriceListHead open, bool isBlank, DateOnly today)
{
    private bool? chosen;
    private DateOnly? typed;

    /// <summary>The day that the file names; null where it names none.</summary>
    public NotedDay? Noted { get; private set; }

    /// <summary>First day of the list that is open.</summary>
    public DateOnly Open => open.ValidFrom;

    /// <summary>True where there is nothing to choose.</summary>
    public bool IsBlank => isBlank;

    /// <summary>True for a new list. A file that names a later day is taken for one until somebody says otherwise.</summary>
    public bool AsNew
    {
        get => !isBlank && (chosen ?? Noted?.Day > Open);
        set => chosen = value;
    }

    /// <summary>First day of a new list: as somebody chose it, else as the file names it, else today.</summary>
    public DateOnly Day
    {
        get => typed ?? Named ?? (today > Open ? today : Open.AddDays(1));
        set => (typed, Unread) = (value, null);
    }

    /// <summary>What is wrong with what was typed instead of a first day of a new list; null where it is one.</summary>
    public string? Unread { get; set; }

    /// <summary>First day of the list that the prices come into.</summary>
    public DateOnly First => AsNew ? Day : isBlank ? Noted?.Day ?? Open : Open;

    /// <summary>The shop's list that begins on the day chosen for a new one, which then cannot be; null where there is none.</summary>
    public PriceListHead? InTheWay => AsNew ? lists.FirstOrDefault(list => list.ValidFrom == Day) : null;

    /// <summary>First day of the list that takes over from a new one; null where that one is the latest.</summary>
    public DateOnly? TakenOver => lists.LastOrDefault(list => list.ValidFrom > Day)?.ValidFrom;

    // A list from the day of the open one would stand in its way.
    private DateOnly? Named => Noted?.Day is { } day && day != Open ? day : null;

    /// <summary>A list with its first day.</summary>
    public Shop Dated(Shop list) => list with { ValidFrom = First };

    /// <summary>That it is stored, without a full stop.</summary>
    /// <param name="format">Writes days.</param>
    /// <param name="terms">How many terms of the file's notes came along.</param>
    public string Stored(PressFormat format, int terms) => NoteSentences.Stored(format.Day(First), AsNew ? format.Day(Open) : null, terms);

    /// <summary>Looks at what the file says; what was chosen stays.</summary>
    public void Look(NotedDay? noted) => Noted = noted;
}
