namespace PressRun.Web.Editions;

/// <summary>A page about a printing that <see cref="PrintingWays"/> leads to.</summary>
public enum PrintingPlace
{
    /// <summary>The book itself.</summary>
    Book,

    /// <summary>What a run costs.</summary>
    Run,

    /// <summary>Papers beside each other.</summary>
    Papers,

    /// <summary>What posting costs.</summary>
    Post,

    /// <summary>How many to print.</summary>
    Reprint,

    /// <summary>The copies ledger.</summary>
    Copies,

    /// <summary>How it is bound.</summary>
    Bench,

    /// <summary>Its sheets to scale; reached from the bench sheet.</summary>
    Imposition,

    /// <summary>What came to each of those who share in it.</summary>
    Payouts,

    /// <summary>Counting while it is bound.</summary>
    Tally,
}
