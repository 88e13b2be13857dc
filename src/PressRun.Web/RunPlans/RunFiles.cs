using System.Globalization;
using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.JobFile;
using PressRun.Web.Layout;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>A job file that can be taken in, with what would come of it.</summary>
/// <param name="Job">As the file says it.</param>
/// <param name="InTheFile">The costing of the file by itself.</param>
/// <param name="Here">What it becomes in this press.</param>
/// <param name="CostHere">What as many copies cost here, by the press's own table; null where that cannot be worked out yet.</param>
public sealed record RunFileLook(Job Job, Estimate InTheFile, TakenIn Here, decimal? CostHere);

/// <summary>Runs as job files, out and in.</summary>
public sealed class RunFiles(CurrentPress presses, EditionStore editions, PlanStore plans, JobFileStore files)
{
    // Where a plan names no quantities to compare, the file gets about so many over the range that its page shows.
    private const int LadderLines = 40;

    /// <summary>Maps the address under which a run is fetched as a job file.</summary>
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/titles/{slug}/{printing:int}/run/job.json", (RunFiles runs, HttpContext http, string slug, int printing, Guid? plan) => runs.SendAsync(http, slug, printing, plan));

    /// <summary>The job of a plan as its file holds it, quantities to compare included: those that its page shows, which need not be worked out for it.</summary>
    public static Job JobOf(JobSource source)
    {
        var job = source.Build();
        return job.Ladder is null && PreparedJob.Prepare(job) is { Succeeded: true, Value: var prepared } && prepared.LandedCost(job.Quantity, out _) is null
            && ShownRange.Of(prepared, job.Quantity, null) is var (from, to, _)
            ? job with { Ladder = new LadderRange(from, to, Math.Max(1, (to - from) / LadderLines)) }
            : job;
    }

    /// <summary>Reads a job file and says what would come of it; every problem where it is refused. Nothing is stored.</summary>
    /// <param name="press">Where it would go.</param>
    /// <param name="utf8">The file.</param>
    /// <param name="edition">The edition beside whose plans it may stand.</param>
    public async Task<Outcome<RunFileLook>> LookAsync(PressId press, ReadOnlyMemory<byte> utf8, Guid edition)
    {
        var (job, estimate) = Cost(utf8);
        if (!estimate.Succeeded)
        {
            return Outcome<RunFileLook>.Refused(estimate.Problems);
        }

        var looked = Of(await files.LookAsync(press, job!, edition));
        return looked.Succeeded ? Outcome<RunFileLook>.Of(new RunFileLook(job!, estimate.Value, looked.Value, CostOf(looked.Value.Source, job!.Quantity))) : Outcome<RunFileLook>.Refused(looked.Problems);
    }

    /// <summary>Takes a job in that was looked at.</summary>
    public async Task<Outcome<TakenIn>> TakeInAsync(PressId press, Job job, Guid edition) => Of(await files.TakeInAsync(press, job, edition));

    /// <summary>Takes a job file in as a title of its own, once for each id; every problem where it is refused.</summary>
    public async Task<Outcome<TakenIn>> TakeInAsync(PressId press, ReadOnlyMemory<byte> utf8, Guid? titleId)
    {
        var (job, estimate) = Cost(utf8);
        return estimate.Succeeded ? Of(await files.TakeInAsync(press, job!, null, titleId)) : Outcome<TakenIn>.Refused(estimate.Problems);
    }

    // What the file says by itself; a file that cannot be costed is not taken in.
    private static (Job? Job, Outcome<Estimate> Estimate) Cost(ReadOnlyMemory<byte> utf8)
    {
        var read = JobReader.Read(utf8);
        var prepared = read.Succeeded ? PreparedJob.Prepare(read.Value) : Outcome<PreparedJob>.Refused(read.Problems);
        return prepared.Succeeded ? (read.Value, prepared.Value.Estimate(read.Value.Quantity)) : (null, Outcome<Estimate>.Refused(prepared.Problems));
    }

    private static decimal? CostOf(JobSource source, int quantity) =>
        PreparedJob.Prepare(source.Build()) is { Succeeded: true, Value: var prepared } && prepared.LandedCost(quantity, out var cost) is null ? cost : null;

    private static Outcome<TakenIn> Of(SaveResult<TakenIn> result) => result switch
    {
        SaveResult<TakenIn>.Saved saved => Outcome<TakenIn>.Of(saved.Now),
        SaveResult<TakenIn>.Refused refused => Outcome<TakenIn>.Refused(refused.Problems),
        _ => Outcome<TakenIn>.Refused(Gone),
    };

    private static Problem Gone => new("$", null, Say($"The printing beside which it was to stand has been taken out in between."));

    private async Task<IResult> SendAsync(HttpContext http, string slug, int printing, Guid? plan)
    {
        if (await presses.OfFileAsync(http) is not { } press
            || await editions.FindAsync(press.Record.Id, slug, printing, http.RequestAborted) is not { } edition)
        {
            return Results.NotFound();
        }

        var all = await plans.OfEditionAsync(press.Record.Id, edition.Id, http.RequestAborted);
        var wanted = plan is { } named ? all.FirstOrDefault(other => other.Id == named) : all.FirstOrDefault(other => other.Chosen) ?? (all.Count > 0 ? all[0] : null);
        if (wanted is null || await plans.SourceAsync(press.Record.Id, wanted.Id, http.RequestAborted) is not { } source)
        {
            return Results.NotFound();
        }

        var name = string.Create(CultureInfo.InvariantCulture, $"{slug}-{printing}-{source.Plan.Quantity}-copies.json");
        return Results.File(JobWriter.Write(JobOf(source)), "application/json", name);
    }
}
