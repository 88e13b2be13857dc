using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PressRun.Migrations.Migrations
{
    /// <inheritdoc />
    public partial class RemovalGuards : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // Rows of a press go with it, where a transaction says that it takes this press out: nobody waits for it, and the rows of others are held meanwhile as ever.
            migrationBuilder.Sql("""
                CREATE OR REPLACE FUNCTION copy_movements_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_LEVEL = 'ROW' AND TG_OP = 'DELETE' THEN
                        IF current_setting('pressrun.removing', true) = old.press_id::text THEN
                            RETURN old;
                        END IF;
                    END IF;
                    RAISE EXCEPTION 'The copies ledger is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION quotes_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_LEVEL = 'ROW' AND TG_OP = 'DELETE' THEN
                        IF current_setting('pressrun.removing', true) = old.press_id::text THEN
                            RETURN old;
                        END IF;
                    END IF;
                    RAISE EXCEPTION 'A quote is frozen, and its course is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION edition_payments_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_LEVEL = 'ROW' AND TG_OP = 'DELETE' THEN
                        IF current_setting('pressrun.removing', true) = old.press_id::text THEN
                            RETURN old;
                        END IF;
                    END IF;
                    RAISE EXCEPTION 'A payment stays as it was written down; write its opposite.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION tallies_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    IF TG_LEVEL = 'ROW' AND TG_OP = 'DELETE' THEN
                        IF current_setting('pressrun.removing', true) = old.press_id::text THEN
                            RETURN old;
                        END IF;
                    END IF;
                    RAISE EXCEPTION 'A tally is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                CREATE OR REPLACE FUNCTION copy_movements_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'The copies ledger is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION quotes_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A quote is frozen, and its course is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION edition_payments_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A payment stays as it was written down; write its opposite.' USING ERRCODE = 'restrict_violation';
                END $$;

                CREATE OR REPLACE FUNCTION tallies_stay() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'A tally is only added to.' USING ERRCODE = 'restrict_violation';
                END $$;
                """);
        }
    }
}
