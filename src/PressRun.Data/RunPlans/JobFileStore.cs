using PressRun.Data.Presses;
using PressRun.Engine.Costing;

namespace PressRun.Data.RunPlans;

/// <summary>What a job file became.</summary>
/// <param name="Slug">Of its title.</param>
/// <param name="Source">The plan with all that its costing needs.</param>
/// <param name="NewTitle">True where the book was not one of the press's.</param>
/// <param name="NewStocks">Names of the papers that the library lacked.</param>
/// <param name="NewShop">Name of the shop that was added with the file's prices; null where the press has them.</param>
public sealed record TakenIn(string Slug, JobSource Source, bool NewTitle, IReadOnlyList<string> NewStocks, string? NewShop);

/// <summary>Job files into a press: all of one, or nothing.</summary>
public sealed class JobFileStore
{
    private readonly PressDatabase database;

    internal JobFileStore(PressDatabase database) => this.database = database;

    /// <summary>Takes a job in as a plan: of the edition where the file makes the same book, else of a new title.</summary>
    /// <param name="press">Where to.</param>
    /// <param name="job">A job that can be costed.</param>
    /// <param name="editionId">The edition beside whose plans it may stand; null for a new title.</param>
    /// <param name="titleId">Id of a new title, made up once by whoever sends the file: sent again with it, what became of it first is answered. Null for any.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<TakenIn>> TakeInAsync(PressId press, Job job, Guid? editionId, Guid? titleId = null, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => new JobIntake(db, job, database.Now).TakeInAsync(editionId, titleId, cancel), cancel);

    /// <summary>What <see cref="TakeInAsync"/> would make of a job; nothing is stored.</summary>
    public Task<SaveResult<TakenIn>> LookAsync(PressId press, Job job, Guid? editionId, CancellationToken cancel = default) =>
        // The same work in a transaction that is never committed: a look cannot say anything else than what taking it in does.
        database.ReadMomentAsync(press, db => new JobIntake(db, job, database.Now).TakeInAsync(editionId, null, cancel), cancel);
}
