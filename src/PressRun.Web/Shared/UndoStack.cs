namespace PressRun.Web.Shared;

/// <summary>Saved edits of one page that can be taken back, last first. It lives and goes with the page.</summary>
public sealed class UndoStack
{
    private const int Most = 50;

    private readonly LinkedList<(string What, Func<Task<string?>> TakeBack)> edits = [];

    // Which version of a thing says again what an earlier one said.
    private readonly Dictionary<(Guid Thing, uint Version), uint> again = [];

    /// <summary>What the next undo takes back, in words; null where nothing is left.</summary>
    public string? Next => edits.Last?.Value.What;

    /// <summary>Remembers a saved edit.</summary>
    /// <param name="what">Such as <c>pages of inside, 28 to 32</c>.</param>
    /// <param name="takeBack">Saves what was before. Answers null when it is saved, otherwise a sentence that says what stands in the way.</param>
    public void Add(string what, Func<Task<string?>> takeBack)
    {
        edits.AddLast((what, takeBack));
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
    public void Add(string what, Guid thing, uint before, uint after, Func<uint, Task<SaveAnswer>> takeBack) => Add(what, async () =>
    {
        var answer = await takeBack(Standing(thing, after));
        if (answer.Version is { } now)
        {
            SaysAgain(thing, before, now);
        }

        return answer.Problem ?? (answer.Version is null ? Say($"Somebody else was first. Choose below which version stands.") : null);
    });

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
}
