using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;
using NpgsqlTypes;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "presses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    currency = table.Column<string>(type: "character(3)", fixedLength: true, maxLength: 3, nullable: false),
                    units = table.Column<string>(type: "text", nullable: false),
                    paper_region = table.Column<string>(type: "text", nullable: false),
                    reclaims_tax = table.Column<bool>(type: "boolean", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_presses", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "bench_rates",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rates = table.Column<string>(type: "json", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bench_rates", x => x.press_id);
                    table.ForeignKey(
                        name: "fk_bench_rates_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "drafts",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person = table.Column<string>(type: "text", nullable: false),
                    subject_kind = table.Column<string>(type: "text", nullable: false),
                    subject_id = table.Column<string>(type: "text", nullable: false),
                    field = table.Column<string>(type: "text", nullable: false),
                    text = table.Column<string>(type: "character varying(20000)", maxLength: 20000, nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drafts", x => new { x.press_id, x.person, x.subject_kind, x.subject_id, x.field });
                    table.ForeignKey(
                        name: "fk_drafts_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "mailers",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    length = table.Column<decimal>(type: "numeric", nullable: false),
                    width = table.Column<decimal>(type: "numeric", nullable: false),
                    thickness = table.Column<decimal>(type: "numeric", nullable: false),
                    mass = table.Column<decimal>(type: "numeric", nullable: false),
                    price = table.Column<decimal>(type: "numeric", nullable: false),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_mailers", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_mailers_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "postage_services",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    valid_from = table.Column<DateOnly>(type: "date", nullable: false),
                    body = table.Column<string>(type: "json", nullable: false),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_postage_services", x => new { x.press_id, x.id, x.valid_from });
                    table.ForeignKey(
                        name: "fk_postage_services_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "shops",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_shops", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_shops_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "stocks",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    weight = table.Column<string>(type: "text", nullable: false),
                    caliper = table.Column<decimal>(type: "numeric", nullable: true),
                    bulk = table.Column<decimal>(type: "numeric", nullable: true),
                    finish = table.Column<string>(type: "text", nullable: true),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stocks", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_stocks_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "titles",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    slug = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    colour = table.Column<string>(type: "text", nullable: false),
                    about = table.Column<string>(type: "text", nullable: false),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    search_text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    search_words = table.Column<NpgsqlTsVector>(type: "tsvector", nullable: false)
                        .Annotation("Npgsql:TsVectorConfig", "simple")
                        .Annotation("Npgsql:TsVectorProperties", new[] { "search_text" }),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_titles", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_titles_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "channels",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    price_includes_tax = table.Column<bool>(type: "boolean", nullable: false),
                    tax_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    trade_discount = table.Column<decimal>(type: "numeric", nullable: false),
                    fee_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    fee_fixed = table.Column<decimal>(type: "numeric", nullable: false),
                    copies_per_order = table.Column<int>(type: "integer", nullable: false),
                    mailer_id = table.Column<string>(type: "text", nullable: true),
                    postage_region = table.Column<string>(type: "text", nullable: true),
                    postage_charged = table.Column<decimal>(type: "numeric", nullable: false),
                    mix = table.Column<decimal>(type: "numeric", nullable: false),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_channels", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_channels_mailers_press_id_mailer_id",
                        columns: x => new { x.press_id, x.mailer_id },
                        principalTable: "mailers",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_channels_presses_press_id",
                        column: x => x.press_id,
                        principalTable: "presses",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "price_lists",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    shop_id = table.Column<string>(type: "text", nullable: false),
                    valid_from = table.Column<DateOnly>(type: "date", nullable: false),
                    body = table.Column<string>(type: "json", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_price_lists", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_price_lists_shops_press_id_shop_id",
                        columns: x => new { x.press_id, x.shop_id },
                        principalTable: "shops",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "editions",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    title_id = table.Column<Guid>(type: "uuid", nullable: false),
                    printing = table.Column<int>(type: "integer", nullable: false),
                    printed_on = table.Column<DateOnly>(type: "date", nullable: true),
                    copies_printed = table.Column<int>(type: "integer", nullable: true),
                    copies_on_hand = table.Column<int>(type: "integer", nullable: false),
                    price = table.Column<decimal>(type: "numeric", nullable: false),
                    free_copies = table.Column<int>(type: "integer", nullable: false),
                    page_width = table.Column<decimal>(type: "numeric", nullable: false),
                    page_height = table.Column<decimal>(type: "numeric", nullable: false),
                    binding = table.Column<string>(type: "text", nullable: false),
                    bleed = table.Column<bool>(type: "boolean", nullable: false),
                    trim_head = table.Column<decimal>(type: "numeric", nullable: false),
                    trim_foot = table.Column<decimal>(type: "numeric", nullable: false),
                    trim_fore_edge = table.Column<decimal>(type: "numeric", nullable: false),
                    trim_spine = table.Column<decimal>(type: "numeric", nullable: false),
                    fold = table.Column<string>(type: "text", nullable: false),
                    weighed_mass = table.Column<decimal>(type: "numeric", nullable: true),
                    weighed_thickness = table.Column<decimal>(type: "numeric", nullable: true),
                    archived = table.Column<bool>(type: "boolean", nullable: false),
                    changed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_editions", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_editions_titles_press_id_title_id",
                        columns: x => new { x.press_id, x.title_id },
                        principalTable: "titles",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "fixed_costs",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fixed_costs", x => new { x.press_id, x.edition_id, x.position });
                    table.ForeignKey(
                        name: "fk_fixed_costs_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "parts",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    pages = table.Column<int>(type: "integer", nullable: false),
                    stock_id = table.Column<string>(type: "text", nullable: false),
                    outside = table.Column<string>(type: "text", nullable: false),
                    inside = table.Column<string>(type: "text", nullable: false),
                    sheet_id = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_parts", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_parts_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_parts_stocks_press_id_stock_id",
                        columns: x => new { x.press_id, x.stock_id },
                        principalTable: "stocks",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "run_plans",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    edition_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    price_list_id = table.Column<Guid>(type: "uuid", nullable: false),
                    date = table.Column<DateOnly>(type: "date", nullable: false),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    ladder_from = table.Column<int>(type: "integer", nullable: true),
                    ladder_to = table.Column<int>(type: "integer", nullable: true),
                    ladder_step = table.Column<int>(type: "integer", nullable: true),
                    finishing = table.Column<List<string>>(type: "text[]", nullable: true),
                    bench_steps = table.Column<List<string>>(type: "text[]", nullable: true),
                    chosen = table.Column<bool>(type: "boolean", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    changed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_run_plans", x => new { x.press_id, x.id });
                    table.ForeignKey(
                        name: "fk_run_plans_editions_press_id_edition_id",
                        columns: x => new { x.press_id, x.edition_id },
                        principalTable: "editions",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_run_plans_price_lists_press_id_price_list_id",
                        columns: x => new { x.press_id, x.price_list_id },
                        principalTable: "price_lists",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "plan_stocks",
                columns: table => new
                {
                    press_id = table.Column<Guid>(type: "uuid", nullable: false),
                    plan_id = table.Column<Guid>(type: "uuid", nullable: false),
                    part_id = table.Column<Guid>(type: "uuid", nullable: false),
                    stock_id = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_plan_stocks", x => new { x.press_id, x.plan_id, x.part_id });
                    table.ForeignKey(
                        name: "fk_plan_stocks_parts_press_id_part_id",
                        columns: x => new { x.press_id, x.part_id },
                        principalTable: "parts",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_plan_stocks_run_plans_press_id_plan_id",
                        columns: x => new { x.press_id, x.plan_id },
                        principalTable: "run_plans",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_plan_stocks_stocks_press_id_stock_id",
                        columns: x => new { x.press_id, x.stock_id },
                        principalTable: "stocks",
                        principalColumns: new[] { "press_id", "id" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_channels_press_id_mailer_id",
                table: "channels",
                columns: new[] { "press_id", "mailer_id" });

            migrationBuilder.CreateIndex(
                name: "ix_editions_press_id_title_id_printing",
                table: "editions",
                columns: new[] { "press_id", "title_id", "printing" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_parts_press_id_edition_id",
                table: "parts",
                columns: new[] { "press_id", "edition_id" });

            migrationBuilder.CreateIndex(
                name: "ix_parts_press_id_stock_id",
                table: "parts",
                columns: new[] { "press_id", "stock_id" });

            migrationBuilder.CreateIndex(
                name: "ix_plan_stocks_press_id_part_id",
                table: "plan_stocks",
                columns: new[] { "press_id", "part_id" });

            migrationBuilder.CreateIndex(
                name: "ix_plan_stocks_press_id_stock_id",
                table: "plan_stocks",
                columns: new[] { "press_id", "stock_id" });

            migrationBuilder.CreateIndex(
                name: "ix_price_lists_press_id_shop_id_valid_from",
                table: "price_lists",
                columns: new[] { "press_id", "shop_id", "valid_from" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_run_plans_one_chosen",
                table: "run_plans",
                columns: new[] { "press_id", "edition_id" },
                unique: true,
                filter: "chosen");

            migrationBuilder.CreateIndex(
                name: "ix_run_plans_press_id_edition_id_position",
                table: "run_plans",
                columns: new[] { "press_id", "edition_id", "position" });

            migrationBuilder.CreateIndex(
                name: "ix_run_plans_press_id_price_list_id",
                table: "run_plans",
                columns: new[] { "press_id", "price_list_id" });

            migrationBuilder.CreateIndex(
                name: "ix_titles_press_id_archived_search_text_id",
                table: "titles",
                columns: new[] { "press_id", "archived", "search_text", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_titles_press_id_slug",
                table: "titles",
                columns: new[] { "press_id", "slug" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_titles_search_words",
                table: "titles",
                column: "search_words")
                .Annotation("Npgsql:IndexMethod", "GIN");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "bench_rates");

            migrationBuilder.DropTable(
                name: "channels");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "drafts");

            migrationBuilder.DropTable(
                name: "fixed_costs");

            migrationBuilder.DropTable(
                name: "plan_stocks");

            migrationBuilder.DropTable(
                name: "postage_services");

            migrationBuilder.DropTable(
                name: "mailers");

            migrationBuilder.DropTable(
                name: "parts");

            migrationBuilder.DropTable(
                name: "run_plans");

            migrationBuilder.DropTable(
                name: "stocks");

            migrationBuilder.DropTable(
                name: "editions");

            migrationBuilder.DropTable(
                name: "price_lists");

            migrationBuilder.DropTable(
                name: "titles");

            migrationBuilder.DropTable(
                name: "shops");

            migrationBuilder.DropTable(
                name: "presses");
        }
    }
}
