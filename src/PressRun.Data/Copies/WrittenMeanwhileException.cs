namespace PressRun.Data.Copies;

/// <summary>Lines of an import may have been written by somebody after they were held against the ledger; nothing was written.</summary>
/// <param name="lines">Ids of these lines.</param>
public sealed class WrittenMeanwhileException(IReadOnlySet<Guid> lines) : Exception
{
    /// <summary>Ids of these lines.</summary>
    public IReadOnlySet<Guid> Lines { get; } = lines;
}
