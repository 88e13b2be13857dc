using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class TitleSums : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "title_sums",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    title_id = table.Column<Guid>(type: "uuid", nullable: false),
                    planned = table.Column<bool>(type: "boolean", nullable: false),
                    printings_on_hand = table.Column<int>(type: "integer", nullable: false),
                    on_hand = table.Column<long>(type: "bigint", nullable: false),
                    asks = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_title_sums", x => new { x.press_id, x.title_id });
                    table.ForeignKey(
                        name: "fk_title_sums_titles_press_id_title_id",
                        columns: x => new { x.press_id, x.title_id },
                        principalTable: "titles",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            // The sums of a title are formed anew under a lock on their row: the statement that forms them begins after the lock is had, and so sees what others committed before.
            migrationBuilder.Sql(
                """
                CREATE FUNCTION title_sums_form(of_press uuid, of_title uuid) RETURNS void LANGUAGE plpgsql AS $$
                BEGIN
                    INSERT INTO title_sums (press_id, title_id, planned, printings_on_hand, on_hand, asks)
                    SELECT titles.press_id, titles.id, false, 0, 0, false FROM titles
                    WHERE titles.press_id = of_press AND titles.id = of_title
                        AND NOT EXISTS (SELECT 1 FROM title_sums AS kept WHERE kept.press_id = of_press AND kept.title_id = of_title)
                    ON CONFLICT DO NOTHING;
                    PERFORM 1 FROM title_sums WHERE title_sums.press_id = of_press AND title_sums.title_id = of_title FOR UPDATE;
                    UPDATE title_sums SET planned = formed.planned, printings_on_hand = formed.printings, on_hand = formed.copies, asks = formed.asks
                    FROM (
                        SELECT coalesce(bool_or(edition.copies_printed IS NULL), false) AS planned,
                               count(*) FILTER (WHERE edition.copies_printed IS NOT NULL AND kept.on_hand > 0) AS printings,
                               coalesce(sum(kept.on_hand) FILTER (WHERE edition.copies_printed IS NOT NULL AND kept.on_hand > 0), 0) AS copies,
                               coalesce(max(edition.printing) = max(edition.printing) FILTER (WHERE kept.on_hand * 10 <= edition.copies_printed), false)
                                   OR coalesce(bool_or(edition.copies_printed IS NULL AND NOT EXISTS (
                                       SELECT 1 FROM run_plans AS plan WHERE plan.press_id = of_press AND plan.edition_id = edition.id AND plan.chosen)), false) AS asks
                        FROM editions AS edition LEFT JOIN edition_copies AS kept ON kept.press_id = edition.press_id AND kept.edition_id = edition.id
                        WHERE edition.press_id = of_press AND edition.title_id = of_title AND NOT edition.archived) AS formed
                    WHERE title_sums.press_id = of_press AND title_sums.title_id = of_title
                        AND (title_sums.planned, title_sums.printings_on_hand, title_sums.on_hand, title_sums.asks)
                            IS DISTINCT FROM (formed.planned, formed.printings, formed.copies, formed.asks);
                END $$;

                CREATE FUNCTION title_sums_of_edition() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_OP <> 'INSERT' THEN PERFORM title_sums_form(OLD.press_id, OLD.title_id); END IF;
                    IF TG_OP <> 'DELETE' THEN PERFORM title_sums_form(NEW.press_id, NEW.title_id); END IF;
                    RETURN NULL;
                END $$;

                -- Of what belongs to an edition; where the edition itself is gone, its own trigger has formed the sums.
                CREATE FUNCTION title_sums_of_belonging() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_OP <> 'INSERT' THEN
                        PERFORM title_sums_form(edition.press_id, edition.title_id) FROM editions AS edition WHERE edition.press_id = OLD.press_id AND edition.id = OLD.edition_id;
                    END IF;
                    IF TG_OP <> 'DELETE' THEN
                        PERFORM title_sums_form(edition.press_id, edition.title_id) FROM editions AS edition WHERE edition.press_id = NEW.press_id AND edition.id = NEW.edition_id;
                    END IF;
                    RETURN NULL;
                END $$;

                SELECT title_sums_form(press_id, title_id) FROM (SELECT DISTINCT press_id, title_id FROM editions) AS titled;

                CREATE TRIGGER title_sums_follow AFTER INSERT OR DELETE OR UPDATE OF title_id, printing, archived, copies_printed ON editions
                FOR EACH ROW EXECUTE FUNCTION title_sums_of_edition();
                CREATE TRIGGER title_sums_follow AFTER INSERT OR DELETE OR UPDATE OF on_hand ON edition_copies FOR EACH ROW EXECUTE FUNCTION title_sums_of_belonging();
                CREATE TRIGGER title_sums_follow AFTER INSERT OR DELETE OR UPDATE OF edition_id, chosen ON run_plans FOR EACH ROW EXECUTE FUNCTION title_sums_of_belonging();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql(
                """
                DROP TRIGGER title_sums_follow ON editions;
                DROP TRIGGER title_sums_follow ON edition_copies;
                DROP TRIGGER title_sums_follow ON run_plans;
                DROP FUNCTION title_sums_of_edition();
                DROP FUNCTION title_sums_of_belonging();
                DROP FUNCTION title_sums_form(uuid, uuid);
                """);

            migrationBuilder.DropTable(
                name: "title_sums");
        }
    }
}
