using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;

namespace PressRun.Data.Titles;

/// <summary>
/// Marks of all that a press's titles are judged by. Each is another one after any change to what it stands for, so that what was reckoned under a mark holds for as long
/// as the mark is read again.
/// </summary>
/// <param name="Libraries">Of all that printings are costed by beside themselves and their plans: settings, papers, price lists, bench, mailers, post and channels.</param>
/// <param name="Planned">Of the printings that are not printed yet, the plans they go by and their titles.</param>
/// <param name="RunningOut">Of the titles whose copies may be gone by a day, and the plans that their printings go by.</param>
/// <param name="Moved">True where a ledger has moved since its title's outlook was reckoned: <paramref name="RunningOut"/> is out of date then.</param>
public sealed record ShelfMarks(string Libraries, string Planned, string RunningOut, bool Moved);

/// <summary>What a press's titles are judged by, all of one moment.</summary>
/// <param name="Marks">Its marks.</param>
/// <param name="Planned">Printings with a plan that are not printed yet.</param>
/// <param name="RunningOut">Titles whose copies may be gone by a day, the first to go first.</param>
public sealed record ShelfStanding(ShelfMarks Marks, IReadOnlyList<PlannedPrinting> Planned, IReadOnlyList<RunningOut> RunningOut);

/// <summary>Reads <see cref="ShelfMarks"/>. Row versions are hashed where they lie: a press of ten thousand titles answers with four words.</summary>
internal static class ShelfMarksReading
{
    /// <summary>Reads the marks in one statement.</summary>
    /// <param name="db">The press's rows.</param>
    /// <param name="by">The day by which copies may be gone.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public static Task<ShelfMarks> ReadAsync(PressRunDbContext db, DateOnly by, CancellationToken cancel)
    {
        var press = db.Press.Value;

        // Plans and titles are looked up one by one, by their keys: joined, every plan of the press would be read to find those of a few printings.
        return db.Database.SqlQuery<ShelfMarks>(
            $"""
            SELECT
                (SELECT md5(coalesce(string_agg(version, ',' ORDER BY version), '')) FROM (
                    SELECT 'press ' || xmin AS version FROM presses WHERE id = {press}
                    UNION ALL SELECT 'stock ' || xmin FROM stocks WHERE press_id = {press}
                    UNION ALL SELECT 'prices ' || xmin FROM price_lists WHERE press_id = {press}
                    UNION ALL SELECT 'bench ' || xmin FROM bench_rates WHERE press_id = {press}
                    UNION ALL SELECT 'mailer ' || xmin FROM mailers WHERE press_id = {press}
                    UNION ALL SELECT 'service ' || xmin FROM postage_services WHERE press_id = {press}
                    UNION ALL SELECT 'channel ' || xmin FROM channels WHERE press_id = {press}) AS library) AS libraries,
                (SELECT md5(coalesce(string_agg(version, ',' ORDER BY version), '')) FROM (
                    SELECT concat_ws(' ', edition.id, edition.xmin,
                        (SELECT title.xmin FROM titles AS title WHERE title.press_id = edition.press_id AND title.id = edition.title_id),
                        (SELECT concat(plan.id, plan.xmin) FROM run_plans AS plan WHERE plan.press_id = edition.press_id AND plan.edition_id = edition.id AND plan.chosen)) AS version
                    FROM editions AS edition WHERE edition.press_id = {press} AND edition.copies_printed IS NULL AND NOT edition.archived) AS printing) AS planned,
                (SELECT md5(coalesce(string_agg(version, ',' ORDER BY version), '')) FROM (
                    SELECT concat_ws(' ', outlook.title_id, outlook.runs_out_on, edition.id, edition.xmin,
                        (SELECT concat(plan.id, plan.xmin) FROM run_plans AS plan WHERE plan.press_id = edition.press_id AND plan.edition_id = edition.id AND plan.chosen)) AS version
                    FROM title_outlooks AS outlook JOIN editions AS edition ON edition.press_id = outlook.press_id AND edition.title_id = outlook.title_id AND NOT edition.archived
                    WHERE outlook.press_id = {press} AND outlook.runs_out_on <= {by}) AS going) AS running_out,
                EXISTS (SELECT 1 FROM title_outlooks AS outlook WHERE outlook.press_id = {press} AND outlook.moved <> outlook.reckoned) AS moved
            """).SingleAsync(cancel);
    }
}
