namespace PressRun.Web.Shared;

/// <summary>Saved edits of one page that can be taken back, last first. It lives and goes with the page.</summary>
public sealed class UndoStack
{
    private const int Most = 50;

    private readonly LinkedList<(string What, Func<Task<string?>> TakeBack)> edits = [];

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
        if (problem is null)
        {
            edits.Remove(last);
        }

        return problem;
    }
}
