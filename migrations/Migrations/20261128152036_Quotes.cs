using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class Quotes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "quotes",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    until = table.Column<DateOnly>(type: "date", nullable: false),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    landed = table.Column<decimal>(type: "numeric", nullable: false),
                    facts = table.Column<string>(type: "text", nullable: false),
                    job = table.Column<string>(type: "text", nullable: false),
                    result = table.Column<string>(type: "text", nullable: false),
                    fingerprint = table.Column<byte[]>(type: "bytea", nullable: false),
                    replaces_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_quotes", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_quotes_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_quotes_quotes_press_id_replaces_id",
                        columns: x => new { x.press_id, x.replaces_id },
                        principalTable: "quotes",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "quote_links",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    quote_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    secret_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    try_from = table.Column<int>(type: "integer", nullable: true),
                    try_to = table.Column<int>(type: "integer", nullable: true),
                    may_remark = table.Column<bool>(type: "boolean", nullable: false),
                    may_agree = table.Column<bool>(type: "boolean", nullable: false),
                    part = table.Column<int>(type: "integer", nullable: true),
                    made_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    answer = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_quote_links", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_quote_links_quotes_press_id_quote_id",
                        columns: x => new { x.press_id, x.quote_id },
                        principalTable: "quotes",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "quote_marks",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quote_id = table.Column<Guid>(type: "uuid", nullable: false),
                    changes = table.Column<int>(type: "integer", nullable: false),
                    seen = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_quote_marks", x => new { x.press_id, x.quote_id });
                    table.ForeignKey(
                        name: "fk_quote_marks_quotes_press_id_quote_id",
                        columns: x => new { x.press_id, x.quote_id },
                        principalTable: "quotes",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "quote_events",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quote_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    link_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false),
                    words = table.Column<string>(type: "text", nullable: false),
                    quantity = table.Column<int>(type: "integer", nullable: true),
                    amount = table.Column<decimal>(type: "numeric", nullable: true),
                    part = table.Column<int>(type: "integer", nullable: true),
                    day = table.Column<DateOnly>(type: "date", nullable: true),
                    fingerprint = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_quote_events", x => new { x.press_id, x.quote_id, x.sequence });
                    table.ForeignKey(
                        name: "fk_quote_events_quote_links_press_id_link_id",
                        columns: x => new { x.press_id, x.link_id },
                        principalTable: "quote_links",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_quote_events_quotes_press_id_quote_id",
                        columns: x => new { x.press_id, x.quote_id },
                        principalTable: "quotes",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_quote_events_press_id_link_id",
                table: "quote_events",
                columns: new[] { "press_id", "link_id" });

            migrationBuilder.CreateIndex(
                name: "ix_quote_links_press_id_quote_id",
                table: "quote_links",
                columns: new[] { "press_id", "quote_id" });

            migrationBuilder.CreateIndex(
                name: "ix_quote_links_secret_hash",
                table: "quote_links",
                column: "secret_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_quotes_press_id_edition_id",
                table: "quotes",
                columns: new[] { "press_id", "edition_id" });

            migrationBuilder.CreateIndex(
                name: "ix_quotes_press_id_number",
                table: "quotes",
                columns: new[] { "press_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_quotes_press_id_replaces_id",
                table: "quotes",
                columns: new[] { "press_id", "replaces_id" },
                unique: true);

            // What is frozen stays to the letter, and what happened is only added. Of a link only its end and its answer are written later, once.
            migrationBuilder.Sql("""
                CREATE FUNCTION quotes_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A quote is frozen, and its course is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE TRIGGER quotes_stay BEFORE UPDATE OR DELETE ON quotes FOR EACH ROW EXECUTE FUNCTION quotes_stay();
                CREATE TRIGGER quotes_stay_all BEFORE TRUNCATE ON quotes FOR EACH STATEMENT EXECUTE FUNCTION quotes_stay();
                CREATE TRIGGER quote_events_stay BEFORE UPDATE OR DELETE ON quote_events FOR EACH ROW EXECUTE FUNCTION quotes_stay();
                CREATE TRIGGER quote_events_stay_all BEFORE TRUNCATE ON quote_events FOR EACH STATEMENT EXECUTE FUNCTION quotes_stay();

                CREATE TRIGGER quote_links_stay BEFORE UPDATE ON quote_links FOR EACH ROW
                WHEN (to_jsonb(old) - 'ended_at' - 'answer' <> to_jsonb(new) - 'ended_at' - 'answer'
                    OR (old.ended_at IS NOT NULL AND old.ended_at IS DISTINCT FROM new.ended_at)
                    OR (old.answer <> 'None' AND old.answer <> new.answer))
                EXECUTE FUNCTION quotes_stay();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "quote_events");

            migrationBuilder.DropTable(
                name: "quote_marks");

            migrationBuilder.DropTable(
                name: "quote_links");

            migrationBuilder.DropTable(
                name: "quotes");

            migrationBuilder.Sql("DROP FUNCTION quotes_stay;");
        }
    }
}
