using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class Payouts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "edition_claims",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claims = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_edition_claims", x => new { x.press_id, x.edition_id });
                    table.ForeignKey(
                        name: "fk_edition_claims_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "edition_payments",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    day = table.Column<DateOnly>(type: "date", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    written_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_edition_payments", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_edition_payments_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_edition_payments_press_id_edition_id_day",
                table: "edition_payments",
                columns: new[] { "press_id", "edition_id", "day" });

            // A payment is only added; one below zero takes back.
            migrationBuilder.Sql("""
                CREATE FUNCTION edition_payments_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A payment stays as it was written down; write its opposite.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE TRIGGER edition_payments_stay BEFORE UPDATE OR DELETE ON edition_payments FOR EACH ROW EXECUTE FUNCTION edition_payments_stay();
                CREATE TRIGGER edition_payments_stay_all BEFORE TRUNCATE ON edition_payments FOR EACH STATEMENT EXECUTE FUNCTION edition_payments_stay();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "edition_claims");

            migrationBuilder.DropTable(
                name: "edition_payments");

            migrationBuilder.Sql("DROP FUNCTION edition_payments_stay;");
        }
    }
}
