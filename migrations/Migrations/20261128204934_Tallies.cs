using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class Tallies : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "tallies",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    plan = table.Column<string>(type: "text", nullable: false),
                    begun_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    copies = table.Column<int>(type: "integer", nullable: false),
                    wanted = table.Column<int>(type: "integer", nullable: false),
                    steps = table.Column<string>(type: "json", nullable: false),
                    lines = table.Column<int>(type: "integer", nullable: false),
                    written_into = table.Column<Guid>(type: "uuid", nullable: true),
                    written_lines = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tallies", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_tallies_copy_movements_press_id_written_into",
                        columns: x => new { x.press_id, x.written_into },
                        principalTable: "copy_movements",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_tallies_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "tally_entries",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    tally_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    step = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    copies = table.Column<int>(type: "integer", nullable: false),
                    seconds = table.Column<int>(type: "integer", nullable: false),
                    by = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    takes_back = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tally_entries", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_tally_entries_tallies_press_id_tally_id",
                        columns: x => new { x.press_id, x.tally_id },
                        principalTable: "tallies",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_tallies_press_id_edition_id_begun_at",
                table: "tallies",
                columns: new[] { "press_id", "edition_id", "begun_at" });

            migrationBuilder.CreateIndex(
                name: "ix_tallies_press_id_written_into",
                table: "tallies",
                columns: new[] { "press_id", "written_into" });

            migrationBuilder.CreateIndex(
                name: "ix_tally_entries_press_id_takes_back",
                table: "tally_entries",
                columns: new[] { "press_id", "takes_back" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_tally_entries_press_id_tally_id_sequence",
                table: "tally_entries",
                columns: new[] { "press_id", "tally_id", "sequence" },
                unique: true);

            migrationBuilder.Sql("""
                CREATE FUNCTION tallies_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A tally is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE TRIGGER tally_entries_stay BEFORE UPDATE OR DELETE ON tally_entries FOR EACH ROW EXECUTE FUNCTION tallies_stay();
                CREATE TRIGGER tally_entries_stay_all BEFORE TRUNCATE ON tally_entries FOR EACH STATEMENT EXECUTE FUNCTION tallies_stay();

                CREATE TRIGGER tallies_stay BEFORE UPDATE ON tallies FOR EACH ROW
                WHEN (to_jsonb(old) - 'lines' - 'written_into' - 'written_lines' <> to_jsonb(new) - 'lines' - 'written_into' - 'written_lines' OR new.lines < old.lines)
                EXECUTE FUNCTION tallies_stay();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "tally_entries");

            migrationBuilder.DropTable(
                name: "tallies");

            migrationBuilder.Sql("DROP FUNCTION tallies_stay;");
        }
    }
}
