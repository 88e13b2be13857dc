using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;

namespace PressRun.Data;

/// <summary>A row of one of the press's libraries. Its id is the word that job files and price lists use for it, unique in the press and
/// never changed, so that a price list kept years ago still names the right paper.</summary>
internal interface ILibraryRow<T> : IInLibrary
    where T : class
{
    T ToItem();

    void Take(T item);
}

/// <summary>What every library row has, whatever it holds.</summary>
internal interface IInLibrary : IOfPress
{
    string Id { get; }

    bool Archived { get; set; }

    /// <summary>Its place in the library.</summary>
    int Position { get; set; }

    uint Version { get; set; }
}

internal static class LibraryRowConfiguration
{
    public static void ConfigureLibrary<TRow, T>(this EntityTypeBuilder<TRow> builder, string table)
        where TRow : class, ILibraryRow<T>
        where T : class
    {
        builder.ToTable(table);
        builder.HasKey(nameof(IOfPress.PressId), "Id");
        builder.HasOne<PressRow>().WithMany().HasForeignKey(nameof(IOfPress.PressId)).OnDelete(DeleteBehavior.Cascade);
        builder.Property(row => row.Version).IsRowVersion();
    }
}

internal static class LibraryRowQueries
{
    /// <summary>The library's own order, which is also the order of preference between equals.</summary>
    public static IQueryable<TRow> InOrder<TRow>(this IQueryable<TRow> rows)
        where TRow : class, IInLibrary =>
        rows.OrderBy(row => row.Position).ThenBy(row => row.Id);
}
