using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class TitleOutlooks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "title_outlooks",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    title_id = table.Column<Guid>(type: "uuid", nullable: false),
                    moved = table.Column<long>(type: "bigint", nullable: false),
                    reckoned = table.Column<long>(type: "bigint", nullable: false),
                    as_of = table.Column<DateOnly>(type: "date", nullable: false),
                    on_hand = table.Column<long>(type: "bigint", nullable: false),
                    days10 = table.Column<double>(type: "double precision", nullable: false),
                    days50 = table.Column<double>(type: "double precision", nullable: false),
                    days90 = table.Column<double>(type: "double precision", nullable: false),
                    runs_out_on = table.Column<DateOnly>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_title_outlooks", x => new { x.press_id, x.title_id });
                    table.ForeignKey(
                        name: "fk_title_outlooks_titles_press_id_title_id",
                        columns: x => new { x.press_id, x.title_id },
                        principalTable: "titles",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_title_outlooks_moved",
                table: "title_outlooks",
                columns: new[] { "press_id", "title_id" },
                filter: "moved <> reckoned");

            migrationBuilder.CreateIndex(
                name: "ix_title_outlooks_press_id_runs_out_on",
                table: "title_outlooks",
                columns: new[] { "press_id", "runs_out_on" });

            // Titles whose ledgers have lines are reckoned when the shelf is next looked at.
            migrationBuilder.Sql(
                """
                INSERT INTO title_outlooks (press_id, title_id, moved, reckoned, as_of, on_hand, days10, days50, days90)
                SELECT DISTINCT line.press_id, edition.title_id, 1, 0, DATE '0001-01-01', 0, 0, 0, 0
                FROM copy_movements AS line JOIN editions AS edition ON edition.press_id = line.press_id AND edition.id = line.edition_id
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "title_outlooks");
        }
    }
}
