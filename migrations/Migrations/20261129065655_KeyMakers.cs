using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class KeyMakers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "made_by",
                table: "api_keys",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_api_keys_made_by",
                table: "api_keys",
                column: "made_by");

            migrationBuilder.AddForeignKey(
                name: "fk_api_keys_users_made_by",
                table: "api_keys",
                column: "made_by",
                principalTable: "users",
                principalColumn: "id",
                onDelete: ReferentialAction.SetNull);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_api_keys_users_made_by",
                table: "api_keys");

            migrationBuilder.DropIndex(
                name: "ix_api_keys_made_by",
                table: "api_keys");

            migrationBuilder.DropColumn(
                name: "made_by",
                table: "api_keys");
        }
    }
}
