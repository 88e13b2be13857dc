using PressRun.Data.Presses;

namespace PressRun.Data.Access;

/// <summary>On whose behalf work is done.</summary>
public abstract record Visitor
{
    private Visitor()
    {
    }

    /// <summary>Nobody who is known; reaches no press.</summary>
    public sealed record Nobody : Visitor;

    /// <summary>The program itself, at its start; reaches everything.</summary>
    public sealed record Program : Visitor;

    /// <summary>Somebody who signed in. What they may do is asked of the database each time.</summary>
    /// <param name="UserId">Who.</param>
    /// <param name="SessionId">By which sign-in; once that is ended, nothing is reached by it.</param>
    public sealed record Person(Guid UserId, Guid SessionId) : Visitor;

    /// <summary>A program that showed a press's key.</summary>
    /// <param name="KeyId">Which key.</param>
    /// <param name="Press">The press that it opens.</param>
    public sealed record Key(Guid KeyId, PressId Press) : Visitor;
}

/// <summary>The visitor of the work that is going on. It follows the work through everything that is awaited and started by it.</summary>
public static class Visiting
{
    private static readonly AsyncLocal<Visitor?> Current = new();

    /// <summary>The visitor; nobody where none was named.</summary>
    public static Visitor Now => Current.Value ?? new Visitor.Nobody();

    /// <summary>Names the visitor until the answer is disposed of.</summary>
    public static IDisposable As(Visitor visitor)
    {
        var before = Current.Value;
        Current.Value = visitor;
        return new Until(before);
    }

    private sealed class Until(Visitor? before) : IDisposable
    {
        public void Dispose() => Current.Value = before;
    }
}
