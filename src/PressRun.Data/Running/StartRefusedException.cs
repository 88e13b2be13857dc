namespace PressRun.Data.Running;

/// <summary>Why PressRun does not start, in sentences for the host: what is wrong, that nothing was changed, and what would be right.</summary>
public sealed class StartRefusedException : Exception
{
    /// <summary>A refusal without its reason.</summary>
    public StartRefusedException()
        : this("PressRun does not start.")
    {
    }

    /// <summary>A refusal for a reason.</summary>
    public StartRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>A refusal for a reason that something else gave.</summary>
    public StartRefusedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
