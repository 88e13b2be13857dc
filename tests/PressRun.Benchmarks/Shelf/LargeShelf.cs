using Microsoft.EntityFrameworkCore;
using PressRun.Data;
using PressRun.Data.Presses;

namespace PressRun.Benchmarks.Shelf;

/// <summary>Fills a press with titles of invented words. Editions, parts and plans are copies of the sample press's, so that each can be costed.</summary>
internal static class LargeShelf
{
    /// <summary>Titles that are added.</summary>
    public const int Titles = 10_000;

    /// <summary>Printings of each.</summary>
    public const int Printings = 5;

    /// <summary>Lines in the ledger of each printing that is printed: the run, and what went out of it.</summary>
    public const int Lines = 40;

    /// <summary>First words of the titles.</summary>
    public static readonly string[] First =
    [
        "Herring", "Harbour", "Lantern", "Tidal", "Ballast", "Fog", "Rope", "Gull", "Mending", "Quay", "Anchor", "Buoy", "Copper", "Drizzle", "Estuary", "Ferry",
        "Gravel", "Hollow", "Island", "Jetty", "Kelp", "Limpet", "Mackerel", "Northern", "Oyster", "Pebble", "Quiet", "Rigging", "Saltmarsh", "Timber",
    ];

    private static readonly string[] Second =
    [
        "Almanac", "Bulletin", "Catalogue", "Diary", "Elegy", "Fieldbook", "Grammar", "Handbook", "Index", "Journal", "Keepsake", "Ledger", "Manual",
        "Notes", "Omnibus", "Primer", "Questions", "Reader", "Sketches", "Tables", "Understudy", "Variations", "Weather",
    ];

    /// <summary>Adds the titles to a press that has editions to copy.</summary>
    public static async Task FillAsync(PressRunDbContext db, PressRecord press)
    {
        db.Database.SetCommandTimeout(TimeSpan.FromMinutes(10));
        var id = press.Id.Value;
        await db.Database.OpenConnectionAsync();
        await db.Database.ExecuteSqlAsync(
            $"""
            CREATE TEMP TABLE pattern AS SELECT row_number() OVER (ORDER BY edition.id) - 1 AS place, edition.id AS edition_id, plan.id AS plan_id
            FROM editions AS edition JOIN run_plans AS plan ON plan.press_id = edition.press_id AND plan.edition_id = edition.id AND plan.chosen
            WHERE edition.press_id = {id}
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO titles (press_id, id, slug, title, by, colour, about, archived, search_text)
            SELECT {id}, md5('title ' || number)::uuid, 'large-' || number, words || ' ' || number, 'Maker ' || number % 400, '#8a3b2e', '', false,
                   lower(words) || ' ' || number || ' maker ' || number % 400
            FROM (SELECT number, ({First})[1 + number % {First.Length}] || ' ' || ({Second})[1 + number % {Second.Length}] AS words
                  FROM generate_series(1, {Titles}) AS number) AS named
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            CREATE TEMP TABLE copy AS
            SELECT number, printing, md5('edition ' || number || ' ' || printing)::uuid AS edition_id, pattern.edition_id AS from_edition, pattern.plan_id AS from_plan
            FROM generate_series(1, {Titles}) AS number CROSS JOIN generate_series(1, {Printings}) AS printing
            JOIN pattern ON pattern.place = (number * 7 + printing) % (SELECT count(*) FROM pattern)
            """);

        // One latest printing in twenty is still planned, one in twenty-five is running out.
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO editions SELECT (jsonb_populate_record(edition, jsonb_build_object(
                'id', copy.edition_id, 'title_id', md5('title ' || number)::uuid, 'printing', copy.printing, 'archived', false,
                'copies_printed', CASE WHEN copy.printing = {Printings} AND number % 20 = 0 THEN NULL ELSE 200 END))).*
            FROM copy JOIN editions AS edition ON edition.press_id = {id} AND edition.id = copy.from_edition
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO edition_copies (press_id, edition_id, on_hand, lines, count_needed)
            SELECT {id}, edition_id, CASE WHEN printing < {Printings} THEN 0 WHEN number % 20 = 0 THEN 0 WHEN number % 25 = 1 THEN 15 ELSE 120 END, 0, false FROM copy
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO parts SELECT (jsonb_populate_record(part, jsonb_build_object('id', md5(copy.edition_id::text || part.id::text)::uuid, 'edition_id', copy.edition_id))).*
            FROM copy JOIN parts AS part ON part.press_id = {id} AND part.edition_id = copy.from_edition
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO run_plans SELECT (jsonb_populate_record(plan, jsonb_build_object('id', md5('plan ' || copy.edition_id::text)::uuid, 'edition_id', copy.edition_id))).*
            FROM copy JOIN run_plans AS plan ON plan.press_id = {id} AND plan.id = copy.from_plan
            """);
        // One title in five has an outlook, and one in fifty of them runs out within weeks.
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO title_outlooks (press_id, title_id, moved, reckoned, as_of, on_hand, days10, days50, days90, runs_out_on)
            SELECT {id}, md5('title ' || number)::uuid, 1, 1, CURRENT_DATE, 120, days, days * 2, days * 3, CURRENT_DATE + days
            FROM (SELECT number, CASE WHEN number % 250 = 0 THEN 3 ELSE 100 + number % 400 END AS days FROM generate_series(5, {Titles}, 5) AS number) AS lasting
            """);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO copy_movements (press_id, id, edition_id, sequence, day, kind, copies, amount, note, written_at)
            SELECT {id}, md5(edition.id::text || line)::uuid, edition.id, line, CURRENT_DATE - 400 + line * 9, CASE WHEN line = 1 THEN 'Printed' ELSE 'Sold' END,
                   CASE WHEN line = 1 THEN 200 ELSE (200 - kept.on_hand) * (line - 2) / ({Lines} - 1) - (200 - kept.on_hand) * (line - 1) / ({Lines} - 1) END, 5, '', now()
            FROM copy JOIN editions AS edition ON edition.press_id = {id} AND edition.id = copy.edition_id AND edition.copies_printed = 200
            JOIN edition_copies AS kept ON kept.press_id = {id} AND kept.edition_id = edition.id CROSS JOIN generate_series(1, {Lines}) AS line
            """);
        await db.Database.ExecuteSqlAsync($"UPDATE edition_copies AS kept SET lines = {Lines} FROM copy WHERE kept.press_id = {id} AND kept.edition_id = copy.edition_id");
        await db.Database.ExecuteSqlAsync($"VACUUM ANALYZE");
    }
}
