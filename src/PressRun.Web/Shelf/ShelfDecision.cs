using PressRun.Data.Titles;

namespace PressRun.Web.Shelf;

/// <summary>What an edition asks of the maker.</summary>
public enum DecisionKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>It is being planned and not printed yet.</summary>
    Planned,

    /// <summary>Its last copies are going.</summary>
    RunningOut,

    /// <summary>To have new copies before the last ones go, a run must be ordered now.</summary>
    Due,

    /// <summary>No copy is on hand; whether they were sold is not known here.</summary>
    NoneLeft,

    /// <summary>It cannot be costed as it stands.</summary>
    NotWorkedOut,

    /// <summary>Being planned, and not paid for even when every copy is sold.</summary>
    NotPaidFor,
}

/// <summary>Says which editions need a decision: by a rule of thumb (common practice), and by the outlook of their title where its sales say one.</summary>
public static class ShelfDecision
{
    /// <summary>What an edition asks.</summary>
    /// <param name="edition">The edition.</param>
    /// <param name="isLatest">True for the title's latest printing: an older one that is gone asks nothing.</param>
    /// <param name="isWorkedOut">False where its plan cannot be costed.</param>
    /// <param name="isPaidFor">False where a planned run is not paid for within its copies for sale.</param>
    public static DecisionKind Of(ShelfEdition edition, bool isLatest, bool isWorkedOut, bool isPaidFor)
    {
        if (edition.CopiesPrinted is not { } printed)
        {
            return !isWorkedOut ? DecisionKind.NotWorkedOut : !isPaidFor ? DecisionKind.NotPaidFor : DecisionKind.Planned;
        }

        if (!isLatest || edition.CopiesOnHand * ShelfQuery.LastCopies > printed)
        {
            return DecisionKind.None;
        }

        return edition.CopiesOnHand == 0 ? DecisionKind.NoneLeft : DecisionKind.RunningOut;
    }

    /// <summary>What an edition asks of a title whose copies run out before a new run could be there: more than that few are left, or that a run is planned.</summary>
    public static DecisionKind WhereDue(DecisionKind kind) => kind is DecisionKind.None or DecisionKind.Planned or DecisionKind.RunningOut ? DecisionKind.Due : kind;

    /// <summary>True where a person must decide something; a run that is merely planned is on its way.</summary>
    public static bool Asks(DecisionKind kind) => kind is not (DecisionKind.None or DecisionKind.Planned);
}
