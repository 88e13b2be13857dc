using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class FixNotes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "fix_notes",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    noticed_on = table.Column<DateOnly>(type: "date", nullable: false),
                    text = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    page = table.Column<int>(type: "integer", nullable: true),
                    mended_in = table.Column<int>(type: "integer", nullable: true),
                    carried_past = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fix_notes", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_fix_notes_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_fix_notes_press_id_edition_id",
                table: "fix_notes",
                columns: new[] { "press_id", "edition_id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "fix_notes");
        }
    }
}
