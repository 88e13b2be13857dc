using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class SearchIndexWithoutPendingList : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_titles_search_words",
                table: "titles");

            migrationBuilder.CreateIndex(
                name: "ix_titles_search_words",
                table: "titles",
                column: "search_words")
                .Annotation("Npgsql:IndexMethod", "GIN")
                .Annotation("Npgsql:StorageParameter:fastupdate", false);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_titles_search_words",
                table: "titles");

            migrationBuilder.CreateIndex(
                name: "ix_titles_search_words",
                table: "titles",
                column: "search_words")
                .Annotation("Npgsql:IndexMethod", "GIN");
        }
    }
}
