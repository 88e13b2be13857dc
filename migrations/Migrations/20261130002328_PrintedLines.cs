using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class PrintedLines : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "ix_copy_movements_printed",
                table: "copy_movements",
                columns: new[] { "press_id", "edition_id" },
                filter: "kind = 'Printed'")
                .Annotation("Npgsql:IndexInclude", new[] { "copies", "amount" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_copy_movements_printed",
                table: "copy_movements");
        }
    }
}
