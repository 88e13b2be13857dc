using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class LinkEndDays : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "ended_on",
                table: "quote_links",
                type: "date",
                nullable: true);

            // The day is written with the end, once.
            migrationBuilder.Sql("""
                DROP TRIGGER quote_links_stay ON quote_links;
                CREATE TRIGGER quote_links_stay BEFORE UPDATE ON quote_links FOR EACH ROW
                WHEN (to_jsonb(old) - 'ended_at' - 'ended_on' - 'maker_gone_at' - 'made_by' - 'answer' <> to_jsonb(new) - 'ended_at' - 'ended_on' - 'maker_gone_at' - 'made_by' - 'answer'
                    OR (old.ended_at IS NOT NULL AND (old.ended_at, old.ended_on) IS DISTINCT FROM (new.ended_at, new.ended_on))
                    OR (new.ended_on IS NOT NULL AND new.ended_at IS NULL)
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
                WHEN (to_jsonb(old) - 'ended_at' - 'maker_gone_at' - 'made_by' - 'answer' <> to_jsonb(new) - 'ended_at' - 'maker_gone_at' - 'made_by' - 'answer'
                    OR (old.ended_at IS NOT NULL AND old.ended_at IS DISTINCT FROM new.ended_at)
                    OR (old.maker_gone_at IS NOT NULL AND old.maker_gone_at IS DISTINCT FROM new.maker_gone_at)
                    OR (new.made_by IS NOT NULL AND old.made_by IS DISTINCT FROM new.made_by)
                    OR (old.answer <> 'None' AND old.answer <> new.answer))
                EXECUTE FUNCTION quotes_stay();
                """);

            migrationBuilder.DropColumn(
                name: "ended_on",
                table: "quote_links");
        }
    }
}
