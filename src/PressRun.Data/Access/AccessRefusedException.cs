namespace PressRun.Data.Access;

/// <summary>Somebody asked for what they may not have. Pages do not offer such things, so this is an attempt, or a right that ended while
/// a page was open.</summary>
public sealed class AccessRefusedException : Exception
{
    /// <summary>A refusal without its reason.</summary>
    public AccessRefusedException()
        : this("This is not yours to see.")
    {
    }

    /// <summary>A refusal for a reason, in a sentence for the visitor.</summary>
    public AccessRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>A refusal for a reason that something else gave.</summary>
    public AccessRefusedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
