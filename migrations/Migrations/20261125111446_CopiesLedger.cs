using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class CopiesLedger : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "copy_movements",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<long>(type: "bigint", nullable: false),
                    day = table.Column<DateOnly>(type: "date", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    copies = table.Column<int>(type: "integer", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: false),
                    channel_id = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: false),
                    written_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    takes_back = table.Column<Guid>(type: "uuid", nullable: true),
                    settled_by = table.Column<Guid>(type: "uuid", nullable: true),
                    import_id = table.Column<Guid>(type: "uuid", nullable: true),
                    printing = table.Column<string>(type: "json", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_copy_movements", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_copy_movements_channels_press_id_channel_id",
                        columns: x => new { x.press_id, x.channel_id },
                        principalTable: "channels",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_copy_movements_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "edition_copies",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    on_hand = table.Column<long>(type: "bigint", nullable: false),
                    lines = table.Column<long>(type: "bigint", nullable: false),
                    count_needed = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_edition_copies", x => new { x.press_id, x.edition_id });
                    table.ForeignKey(
                        name: "fk_edition_copies_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_press_id_channel_id",
                table: "copy_movements",
                columns: new[] { "press_id", "channel_id" });

            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_press_id_edition_id_day_sequence",
                table: "copy_movements",
                columns: new[] { "press_id", "edition_id", "day", "sequence" });

            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_press_id_edition_id_sequence",
                table: "copy_movements",
                columns: new[] { "press_id", "edition_id", "sequence" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_press_id_import_id",
                table: "copy_movements",
                columns: new[] { "press_id", "import_id" });

            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_press_id_takes_back",
                table: "copy_movements",
                columns: new[] { "press_id", "takes_back" },
                unique: true);

            // What was printed and is left becomes the ledger's first lines, so that the sum of the lines is what was on hand.
            migrationBuilder.Sql("""
                INSERT INTO edition_copies (press_id, edition_id, on_hand, lines, count_needed)
                SELECT press_id, id, copies_on_hand, 0, false FROM editions;

                INSERT INTO copy_movements (press_id, id, edition_id, sequence, day, kind, copies, amount, note, written_at)
                SELECT press_id, gen_random_uuid(), id, 1, coalesce(printed_on, date '2000-01-01'), 'Printed', copies_printed, 0,
                       'Carried over from before the ledger.', now()
                FROM editions WHERE copies_printed > 0;

                INSERT INTO copy_movements (press_id, id, edition_id, sequence, day, kind, copies, amount, note, written_at)
                SELECT press_id, gen_random_uuid(), id, 2, coalesce(printed_on, date '2000-01-01'), 'Counted', copies_on_hand - coalesce(copies_printed, 0), 0,
                       'Carried over from before the ledger.', now()
                FROM editions WHERE copies_on_hand <> coalesce(copies_printed, 0);

                UPDATE edition_copies SET lines = 2;
                """);

            migrationBuilder.DropColumn(
                name: "copies_on_hand",
                table: "editions");

            migrationBuilder.Sql("""
                CREATE FUNCTION copy_movements_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'The copies ledger is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE TRIGGER copy_movements_stay BEFORE UPDATE OR DELETE ON copy_movements FOR EACH ROW EXECUTE FUNCTION copy_movements_stay();
                CREATE TRIGGER copy_movements_stay_all BEFORE TRUNCATE ON copy_movements FOR EACH STATEMENT EXECUTE FUNCTION copy_movements_stay();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "copies_on_hand",
                table: "editions",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.Sql("""
                UPDATE editions SET copies_on_hand = greatest(0, on_hand)
                FROM edition_copies WHERE edition_copies.press_id = editions.press_id AND edition_id = id;
                """);

            migrationBuilder.DropTable(
                name: "copy_movements");

            migrationBuilder.DropTable(
                name: "edition_copies");

            migrationBuilder.Sql("DROP FUNCTION copy_movements_stay;");
        }
    }
}
