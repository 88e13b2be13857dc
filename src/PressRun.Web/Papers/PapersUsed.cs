using PressRun.Web.Shared;

namespace PressRun.Web.Papers;

/// <summary>Which printings were made to go by other papers on this visit, so that it can be taken back when one comes back from looking at something else. One per circuit.</summary>
public sealed class PapersUsed
{
    private readonly Dictionary<Guid, UsesOfPrinting> printings = [];

    /// <summary>What was done to a printing. Where it goes by another plan since, that is forgotten: there is nothing of it to take back.</summary>
    /// <param name="edition">The printing.</param>
    /// <param name="goneBy">The plan that it goes by now.</param>
    public UsesOfPrinting Of(Guid edition, Guid? goneBy)
    {
        if (!printings.TryGetValue(edition, out var uses) || (uses.Last is { } last && last.Plan.Id != goneBy))
        {
            printings[edition] = uses = new UsesOfPrinting();
        }

        return uses;
    }
}

/// <summary>Papers that one printing was made to go by, one after the other.</summary>
public sealed class UsesOfPrinting
{
    private readonly Stack<UsedPapers> used = [];

    /// <summary>How they are taken back.</summary>
    public UndoStack Edits { get; } = new();

    /// <summary>The last of them; null where there are none, or all are taken back.</summary>
    public UsedPapers? Last => used.TryPeek(out var last) ? last : null;

    /// <summary>What was taken back last; null where nothing was yet.</summary>
    public UsedPapers? TakenBack { get; private set; }

    /// <summary>Remembers one.</summary>
    /// <param name="now">What it goes by.</param>
    /// <param name="what">It in words.</param>
    /// <param name="takeBack">Takes it back. Answers null when that is done.</param>
    public void Add(UsedPapers now, string what, Func<Task<string?>> takeBack)
    {
        used.Push(now);
        Edits.Add(what, async () =>
        {
            var problem = await takeBack();
            if (problem is null)
            {
                TakenBack = used.Pop();
            }

            return problem;
        });
    }
}
