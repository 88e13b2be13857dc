using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class Mails : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "mails",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    quote_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    address = table.Column<string>(type: "text", nullable: false),
                    due_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    tries = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_mails", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_mails_quote_events_press_id_quote_id_sequence",
                        columns: x => new { x.press_id, x.quote_id, x.sequence },
                        principalTable: "quote_events",
                        principalColumns: new[] { "press_id", "quote_id", "sequence" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_mails_due_at",
                table: "mails",
                column: "due_at");

            migrationBuilder.CreateIndex(
                name: "ix_mails_press_id_quote_id_sequence_address",
                table: "mails",
                columns: new[] { "press_id", "quote_id", "sequence", "address" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "mails");
        }
    }
}
