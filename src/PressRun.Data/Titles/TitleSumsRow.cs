using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;

namespace PressRun.Data.Titles;

/// <summary>
/// Sums over the printings of a title that are not put away, so that a shelf of many titles is summed by one row each. The database keeps them: triggers form them
/// anew, in the same transaction, whenever a printing, its copies or the choice of its plan change. A title without a printing has none.
/// </summary>
internal sealed class TitleSumsRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid TitleId { get; set; }

    /// <summary>True where a printing is not printed yet.</summary>
    public bool Planned { get; set; }

    /// <summary>Printings of which copies are on hand.</summary>
    public int PrintingsOnHand { get; set; }

    /// <summary>Copies on hand of all that is printed, 0 or more: a printing of which more went than were known of counts as none.</summary>
    public long OnHand { get; set; }

    /// <summary>True where the last copies of the latest printing are going (see <see cref="ShelfQuery.LastCopies"/>), or a planned printing goes by no plan.</summary>
    public bool Asks { get; set; }
}

internal sealed class TitleSumsRowConfiguration : IEntityTypeConfiguration<TitleSumsRow>
{
    public void Configure(EntityTypeBuilder<TitleSumsRow> builder)
    {
        builder.ToTable("title_sums");
        builder.HasKey(row => new { row.PressId, row.TitleId });
        builder.HasOne<TitleRow>().WithOne().HasForeignKey<TitleSumsRow>(row => new { row.PressId, row.TitleId }).OnDelete(DeleteBehavior.Cascade);
    }
}
