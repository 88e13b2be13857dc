using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class BenchLimits : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "bench_limits",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    limits = table.Column<string>(type: "json", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bench_limits", x => x.press_id);
                    table.ForeignKey(
                        name: "fk_bench_limits_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "bench_limits");
        }
    }
}
