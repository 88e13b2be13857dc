using System.Collections.Concurrent;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Data.Running;

namespace PressRun.Web.People;

/// <summary>What has become of a sign-in while a page was open.</summary>
public enum AccessChange
{
    /// <summary>It has ended.</summary>
    Ended,

    /// <summary>It may do other things than before in some press: the page looks whether in its own.</summary>
    Rights,

    /// <summary>It may be so, and nobody was told: the page looks for itself.</summary>
    Missed,
}

/// <summary>The sign-ins that have pages open at this node. A page is told at once when its sign-in ends, on whatever node that was done, and a
/// moment later its line is cut, whether or not it went. One that has ended by itself is found within half a minute. Where news may have been missed, each page
/// is told to look whether it still shows what it may.</summary>
public sealed class LiveSessions : IDisposable
{
    private static readonly TimeSpan TimeToGo = TimeSpan.FromMilliseconds(400);

    // So often it is looked whether a sign-in has ended by itself, because of its age or because nobody was there.
    private static readonly TimeSpan Rounds = TimeSpan.FromSeconds(30);

    /// <summary>Most lines of one person to this node. Each holds a page in the server's memory; nobody reads so many at once, on all their devices together.</summary>
    public const int MostOfOne = 30;

    /// <summary>Most pages of one person that this node holds while a new line may open: a page whose line was lost is kept for some minutes, so that it can come back.</summary>
    public const int MostHeld = MostOfOne + (MostOfOne / 2);

    private readonly Lock connecting = new();
    private readonly ConcurrentDictionary<object, Guid> held = new();
    private readonly ConcurrentDictionary<object, (Visitor.Person Person, Func<AccessChange, Task> Tell)> pages = new();
    private readonly ConcurrentDictionary<object, (Visitor.Person Person, Action Cut)> lines = new();
    private readonly IAccessNews news;
    private readonly SessionStore sessions;
    private readonly TimeProvider time;
    private readonly ITimer rounds;

    /// <summary>Listens to the news.</summary>
    public LiveSessions(IAccessNews news, SessionStore sessions, TimeProvider time)
    {
        (this.news, this.sessions, this.time) = (news, sessions, time);
        news.SessionEnded += End;
        news.RightsChanged += Change;
        news.Missed += Miss;
        rounds = time.CreateTimer(_ => LookAgain(), null, Rounds, Rounds);
    }

    /// <summary>Has a page told of changes until the answer is disposed of.</summary>
    public IDisposable Watch(Visitor.Person person, Func<AccessChange, Task> tell) => Keep(pages, (person, tell));

    /// <summary>True while somebody may open one more line, whichever of their sign-ins it is by, and whatever pages they left behind.</summary>
    public bool HasRoom(Visitor.Person person) =>
        lines.Values.Count(line => line.Person.UserId == person.UserId) < MostOfOne && held.Values.Count(user => user == person.UserId) < MostHeld;

    /// <summary>Counts a page that the server holds in memory, with or without its line, until the answer is disposed of.</summary>
    public IDisposable Hold(Visitor.Person person) => Keep(held, person.UserId);

    /// <summary>Has a line cut when its sign-in ends, until the answer is disposed of.</summary>
    /// <returns>Null where the person has as many lines as there may be.</returns>
    public IDisposable? Connect(Visitor.Person person, Action cut)
    {
        lock (connecting)
        {
            return HasRoom(person) ? Keep(lines, (person, cut)) : null;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        rounds.Dispose();
        news.SessionEnded -= End;
        news.RightsChanged -= Change;
        news.Missed -= Miss;
    }

    private static Kept<T> Keep<T>(ConcurrentDictionary<object, T> where, T what)
    {
        var key = new object();
        where[key] = what;
        return new Kept<T>(where, key);
    }

    private void End(Guid session) => _ = EndAsync(session);

    private async Task EndAsync(Guid session)
    {
        // A page that is busy hears of it when it is done; no line waits for that.
        _ = TellAsync(person => person.SessionId == session, AccessChange.Ended);
        await Task.Delay(TimeToGo, time);
        foreach (var (_, line) in lines.Where(line => line.Value.Person.SessionId == session))
        {
            line.Cut();
        }
    }

    private void Change(Guid user) => _ = TellAsync(person => person.UserId == user, AccessChange.Rights);

    private void Miss()
    {
        LookAgain();
        _ = TellAsync(_ => true, AccessChange.Missed);
    }

    private Task TellAsync(Func<Visitor.Person, bool> whom, AccessChange change) =>
        Task.WhenAll(pages.Where(page => whom(page.Value.Person)).Select(page => TellAsync(page.Key, page.Value.Tell, change)));

    private async Task TellAsync(object page, Func<AccessChange, Task> tell, AccessChange change)
    {
        try
        {
            await tell(change);
        }
        catch (Exception exception) when (exception is ObjectDisposedException or InvalidOperationException)
        {
            // The page has gone by itself in between.
            pages.TryRemove(page, out _);
        }
    }

    private void LookAgain() => _ = LookAgainAsync();

    private async Task LookAgainAsync()
    {
        foreach (var person in lines.Values.Select(line => line.Person).Distinct())
        {
            if (!await sessions.LastsAsync(person.UserId, person.SessionId))
            {
                End(person.SessionId);
            }
        }
    }

    private sealed class Kept<T>(ConcurrentDictionary<object, T> where, object key) : IDisposable
    {
        public void Dispose() => where.TryRemove(key, out _);
    }
}
