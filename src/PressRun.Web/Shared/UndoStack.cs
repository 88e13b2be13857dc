namespace PressRun.Web.Shared;

/// <summary>Saved edits of one page that can be taken back, last first. It lives and goes with the page.</summary>
public sealed class UndoStack
{
    private const int Most = 50;

    // As long as somebody who steps a number by its keys lets pass between two of them, and no longer.
    private static readonly TimeSpan OneMove = TimeSpan.FromSeconds(3);

    private readonly LinkedList<Edit> edits = [];

    // Which version of a thing says again what an earlier one said.
    private readonly Dictionary<(Guid Thing, uint Version), uint> again = [];

    /// <summary>What the next undo takes back, in words; null where nothing is left.</summary>
    public string? Next => edits.Last?.Value.What;

    /// <summary>Remembers a saved edit.</summary>
    /// <param name="what">Such as <c>pages of inside, 28 to 32</c>.</param>
    /// <param name="takeBack">Saves what was before. Answers null when it is saved, otherwise a sentence that says what stands in the way.</param>
    public void Add(string what, Func<Task<string?>> takeBack)
    {
        Add(new Edit(what, takeBack, null));
    }

    private void Add(Edit edit)
    {
        edits.AddLast(edit);
        if (edits.Count > Most)
        {
            edits.RemoveFirst();
        }
    }

    /// <summary>Remembers a saved edit of what others save too. It is taken back over what the edit itself stored, and never over what somebody else made of it.</summary>
    /// <param name="what">Such as <c>pages of inside, 28 to 32</c>.</param>
    /// <param name="thing">Id of what was edited.</param>
    /// <param name="before">The version that the edit was made from.</param>
    /// <param name="after">The version that it stored.</param>
    /// <param name="takeBack">Saves what was before over the version that it is given.</param>
    public void Add(string what, Guid thing, uint before, uint after, Func<uint, Task<SaveAnswer>> takeBack) => Add(what, Over(thing, before, after, takeBack));

    /// <summary>Remembers a saved step of a number. Steps that follow each other at once are one edit, which goes back to where the first of them began.</summary>
    /// <typeparam name="T">What is stored.</typeparam>
    /// <param name="thing">Id of what was edited.</param>
    /// <param name="was">As it was before this step.</param>
    /// <param name="before">The version that the step was made from.</param>
    /// <param name="after">The version that it stored.</param>
    /// <param name="at">When.</param>
    /// <param name="what">Names the edit by what it began from.</param>
    /// <param name="takeBack">Saves what it began from over the version that it is given.</param>
    public void AddStep<T>(Guid thing, T was, uint before, uint after, DateTimeOffset at, Func<T, string> what, Func<T, uint, Task<SaveAnswer>> takeBack)
    {
        var (first, from) = (was, before);
        if (edits.Last is { Value.Step: { First: T began } earlier } && earlier.Thing == thing && Standing(thing, earlier.After) == before && at - earlier.At <= OneMove)
        {
            (first, from) = (began, earlier.From);
            edits.RemoveLast();
        }

        Add(new Edit(what(first), Over(thing, from, after, over => takeBack(first, over)), new Step(thing, first!, from, after, at)));
    }

    private Func<Task<string?>> Over(Guid thing, uint before, uint after, Func<uint, Task<SaveAnswer>> takeBack) => async () =>
    {
        var answer = await takeBack(Standing(thing, after));
        if (answer.Version is { } now)
        {
            SaysAgain(thing, before, now);
        }

        return answer.Problem ?? (answer.Version is null ? Say($"Somebody else was first. Choose below which version stands.") : null);
    };

    /// <summary>The version of a thing that says what a version of it said: that one itself, or the one by which it was last brought back here.</summary>
    public uint Standing(Guid thing, uint version)
    {
        while (again.TryGetValue((thing, version), out var later))
        {
            version = later;
        }

        return version;
    }

    /// <summary>Remembers that a new version of a thing says what an earlier one said.</summary>
    public void SaysAgain(Guid thing, uint version, uint now)
    {
        if (now != version)
        {
            again[(thing, version)] = now;
        }
    }

    /// <summary>Forgets all edits, because what they would go back to has been replaced.</summary>
    public void Clear() => edits.Clear();

    /// <summary>Takes back the last edit. Answers null when it is saved (or nothing was left), otherwise what stands in the way; the edit then stays.</summary>
    public async Task<string?> TakeBackAsync()
    {
        if (edits.Last is not { } last)
        {
            return null;
        }

        var problem = await last.Value.TakeBack();
        // Where somebody else was first, all edits may be forgotten by now.
        if (problem is null && last.List is not null)
        {
            edits.Remove(last);
        }

        return problem;
    }

    private sealed record Edit(string What, Func<Task<string?>> TakeBack, Step? Step);

    private sealed record Step(Guid Thing, object First, uint From, uint After, DateTimeOffset At);
}
