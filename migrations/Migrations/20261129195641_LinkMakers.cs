using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class LinkMakers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "made_by",
                table: "quote_links",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "maker_gone_at",
                table: "quote_links",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_quote_links_made_by",
                table: "quote_links",
                column: "made_by");

            migrationBuilder.AddForeignKey(
                name: "fk_quote_links_users_made_by",
                table: "quote_links",
                column: "made_by",
                principalTable: "users",
                principalColumn: "id",
                onDelete: ReferentialAction.SetNull);

            // As before, of a link its end and its answer are written later, once; its maker is forgotten with the account, and never another one.
            migrationBuilder.Sql("""
                DROP TRIGGER quote_links_stay ON quote_links;
                CREATE TRIGGER quote_links_stay BEFORE UPDATE ON quote_links FOR EACH ROW
                WHEN (to_jsonb(old) - 'ended_at' - 'maker_gone_at' - 'made_by' - 'answer' <> to_jsonb(new) - 'ended_at' - 'maker_gone_at' - 'made_by' - 'answer'
                    OR (old.ended_at IS NOT NULL AND old.ended_at IS DISTINCT FROM new.ended_at)
                    OR (old.maker_gone_at IS NOT NULL AND old.maker_gone_at IS DISTINCT FROM new.maker_gone_at)
                    OR (new.made_by IS NOT NULL AND old.made_by IS DISTINCT FROM new.made_by)
                    OR (old.answer <> 'None' AND old.answer <> new.answer))
                EXECUTE FUNCTION quotes_stay();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                DROP TRIGGER quote_links_stay ON quote_links;
                CREATE TRIGGER quote_links_stay BEFORE UPDATE ON quote_links FOR EACH ROW
                WHEN (to_jsonb(old) - 'ended_at' - 'answer' <> to_jsonb(new) - 'ended_at' - 'answer'
                    OR (old.ended_at IS NOT NULL AND old.ended_at IS DISTINCT FROM new.ended_at)
                    OR (old.answer <> 'None' AND old.answer <> new.answer))
                EXECUTE FUNCTION quotes_stay();
                """);

            migrationBuilder.DropForeignKey(
                name: "fk_quote_links_users_made_by",
                table: "quote_links");

            migrationBuilder.DropIndex(
                name: "ix_quote_links_made_by",
                table: "quote_links");

            migrationBuilder.DropColumn(
                name: "made_by",
                table: "quote_links");

            migrationBuilder.DropColumn(
                name: "maker_gone_at",
                table: "quote_links");
        }
    }
}
