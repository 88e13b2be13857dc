using System.Collections;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

/// <summary>No column of a press is left behind when the press goes to another server. A new one goes through <c>Archive/</c> and gets a value in <see cref="FullPress.FilledAsync"/>.</summary>
public sealed class ArchiveColumnsTests(PostgresFixture postgres)
{
    /// <summary>Tables and columns of a press that an archive leaves out, with the reason.</summary>
    private static readonly Dictionary<string, string> Staying = new(StringComparer.Ordinal)
    {
        ["memberships"] = "people have their accounts on one server",
        ["invitations"] = "they are to accounts on one server",
        ["api_keys"] = "secrets of one server",
        ["drafts"] = "what somebody has typed and not saved yet",
        ["mails"] = "what one server still has to send",
        ["title_outlooks"] = "reckoned from the ledger wherever it is",
        ["presses.created_at"] = "the moment of coming to this server",
        ["editions.changed_at"] = "the moment of the last save on this server",
        ["run_plans.changed_at"] = "the moment of the last save on this server",
        ["copy_movements.written_at"] = "the moment of coming to this server",
        ["edition_payments.written_at"] = "the moment of coming to this server; the order of a day's payments is held by PayoutStoreTests",
        ["quote_links.made_by"] = "people have their accounts on one server",
        ["copy_movements.import_id"] = "an import is taken back where it was made, soon after",
    };

    [Fact]
    public async Task Every_column_of_a_press_says_the_same_after_it_went_out_and_came_in_elsewhere()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = await FullPress.FilledAsync(stores);
        await using var elsewhere = await Stores.NewAsync(postgres);
        var copied = (await elsewhere.Archives.ImportAsync((await stores.Archives.ExportAsync(press))!)).Value;
        await using var there = stores.Context(press);
        await using var here = elsewhere.Context(copied.Id);
        var (before, after) = (new PressRows(there), new PressRows(here));

        Assert.Empty(Staying.Keys.Except(before.Tables.Select(table => table.GetTableName()!).Concat(before.Tables.SelectMany(Columns).Select(Name))));
        var columns = before.Tables.Where(table => !Staying.ContainsKey(table.GetTableName()!)).SelectMany(Columns).Where(column => !Staying.ContainsKey(Name(column))).ToList();
        Nothing(columns.Where(column => !before.Say(column)).Select(column =>
            $"{Name(column)}: FullPress.FilledAsync leaves it as a new row has it, so that nobody would see it lost"));
        Nothing(columns.Where(column => !before.Values(column).SequenceEqual(after.Values(column), StringComparer.Ordinal)).Select(column =>
            $"{Name(column)}: {string.Join(", ", before.Values(column))} went out, {string.Join(", ", after.Values(column))} came in"));
        // Each column by itself is right: what is left are rows that name others than they did.
        Nothing(columns.Select(column => (IEntityType)column.DeclaringType).Distinct().SelectMany(table =>
        {
            var (went, came) = (before.Rows(table, columns), after.Rows(table, columns));
            return went.Except(came, StringComparer.Ordinal).Select(row => $"Went out and did not come in: {row}")
                .Concat(came.Except(went, StringComparer.Ordinal).Select(row => $"Came in and never went out: {row}"));
        }));
    }

    // What names a row, and what counts its saves, is another one on every server.
    private static IEnumerable<IProperty> Columns(IEntityType table) => table.GetProperties()
        .Where(column => column.ClrType != typeof(PressId) && !column.IsConcurrencyToken && !(column.Name == "Id" && column.ClrType == typeof(Guid)));

    private static string Name(IProperty column) => $"{column.DeclaringType.GetTableName()}.{column.GetColumnName()}";

    private static void Nothing(IEnumerable<string> found)
    {
        var lines = found.ToList();
        Assert.True(lines.Count == 0, string.Join(Environment.NewLine, lines));
    }

    /// <summary>All rows of a press.</summary>
    private sealed class PressRows(PressRunDbContext db)
    {
        private readonly Dictionary<IEntityType, List<object>> read = [];

        /// <summary>Tables whose rows are of one press, and that of the presses.</summary>
        public IReadOnlyList<IEntityType> Tables { get; } = [.. db.Model.GetEntityTypes().Where(table => typeof(IOfPress).IsAssignableFrom(table.ClrType) || table.ClrType == typeof(PressRow))];

        /// <summary>Whether a row says anything in a column that a new one does not.</summary>
        public bool Say(IProperty column)
        {
            var fresh = Text(column, Activator.CreateInstance(column.DeclaringType.ClrType)!);
            return Of((IEntityType)column.DeclaringType).Exists(row => Text(column, row) != fresh);
        }

        /// <summary>What the rows say in a column, in a stable order.</summary>
        public IEnumerable<string> Values(IProperty column) => Of((IEntityType)column.DeclaringType).Select(row => Text(column, row)).Order(StringComparer.Ordinal);

        /// <summary>What whole rows say, the rows that they name told by what those say.</summary>
        public List<string> Rows(IEntityType table, IReadOnlyList<IProperty> columns) => Of(table).ConvertAll(row => Told(table, row, columns));

        private string Told(IEntityType table, object row, IReadOnlyList<IProperty> columns) =>
            $"{table.GetTableName()} ({string.Join(", ", columns.Where(column => column.DeclaringType == table).Select(column =>
                $"{column.GetColumnName()} {(column.PropertyInfo!.GetValue(row) is Guid id ? Named(id, columns) : Short(Text(column, row)))}"))})";

        // A document is known again by its beginning and its fingerprint.
        private static string Short(string text) =>
            text.Length <= 60 ? text : $"{text[..40].ReplaceLineEndings(" ")}... {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..8]}";

        private string Named(Guid id, IReadOnlyList<IProperty> columns)
        {
            foreach (var table in Tables.Where(table => table.FindProperty("Id")?.ClrType == typeof(Guid)))
            {
                if (Of(table).Find(row => id.Equals(table.FindProperty("Id")!.PropertyInfo!.GetValue(row))) is { } row)
                {
                    return Told(table, row, columns);
                }
            }

            return $"{id}";
        }

        private List<object> Of(IEntityType table)
        {
            if (!read.TryGetValue(table, out var rows))
            {
                var set = (IEnumerable)typeof(DbContext).GetMethod(nameof(DbContext.Set), 1, [])!.MakeGenericMethod(table.ClrType).Invoke(db, null)!;
                read[table] = rows = [.. set.Cast<object>().Where(row => row is not PressRow press || press.Id == db.Press)];
            }

            return rows;
        }

        private static string Text(IProperty column, object row) => column.PropertyInfo!.GetValue(row) is not { } value
            ? "nothing"
            : (column.GetTypeMapping().Converter?.ConvertToProvider(value) ?? value) switch
            {
                Guid id => id == Guid.Empty ? "nothing" : "a row",
                byte[] bytes => Convert.ToHexStringLower(bytes),
                decimal number => (number / 1.0000000000000000000000000000m).ToString(CultureInfo.InvariantCulture),
                DateTimeOffset moment => moment.ToString("O", CultureInfo.InvariantCulture),
                IEnumerable<string> words => $"[{string.Join(", ", words)}]",
                var other => $"\"{Convert.ToString(other, CultureInfo.InvariantCulture)}\"",
            };
    }
}
