namespace PressRun.Engine.Costing;

/// <summary>Something to look at.</summary>
/// <param name="Code">What.</param>
/// <param name="Message">A sentence with its figures.</param>
public sealed record Warning(WarningCode Code, string Message)
{
    /// <summary>Names of the stocks or channels that it concerns, in the job's order; empty where it concerns the whole run.</summary>
    public IReadOnlyList<string> About { get; init; } = [];
}

/// <summary>What to look at, in the order in which they stand.</summary>
public enum WarningCode
{
    /// <summary>The innermost leaves stand out further than the fore-edge trim takes off.</summary>
    CreepExceedsTrim,

    /// <summary>A thickness rests on a finish's usual bulk.</summary>
    CaliperEstimated,

    /// <summary>A carton is heavier than one person should lift without care.</summary>
    HeavyCarton,

    /// <summary>The page does not lie in a mailer.</summary>
    MailerTooSmall,

    /// <summary>No service takes the piece of mail.</summary>
    NoPostage,

    /// <summary>The piece is so near to a step's limit that paper's variation may cross it.</summary>
    NearPostageStep,

    /// <summary>No price pays for a copy through this channel.</summary>
    NoBreakEvenPrice,

    /// <summary>The run is not paid for even when all its copies for sale are sold.</summary>
    BreakEvenBeyondRun,
}
