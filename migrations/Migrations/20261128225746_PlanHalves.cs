using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class PlanHalves : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "second_stock_id",
                table: "plan_stocks",
                type: "text",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_plan_stocks_press_id_second_stock_id",
                table: "plan_stocks",
                columns: new[] { "press_id", "second_stock_id" });

            migrationBuilder.AddForeignKey(
                name: "fk_plan_stocks_stocks_press_id_second_stock_id",
                table: "plan_stocks",
                columns: new[] { "press_id", "second_stock_id" },
                principalTable: "stocks",
                principalColumns: new[] { "press_id", "id" },
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_plan_stocks_stocks_press_id_second_stock_id",
                table: "plan_stocks");

            migrationBuilder.DropIndex(
                name: "ix_plan_stocks_press_id_second_stock_id",
                table: "plan_stocks");

            migrationBuilder.DropColumn(
                name: "second_stock_id",
                table: "plan_stocks");
        }
    }
}
