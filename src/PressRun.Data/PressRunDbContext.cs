using System.Linq.Expressions;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Bench;
using PressRun.Data.Conversions;
using PressRun.Data.Copies;
using PressRun.Data.Drafts;
using PressRun.Data.Fixes;
using PressRun.Data.Mail;
using PressRun.Data.Payouts;
using PressRun.Data.People;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data;

/// <summary>The database. A context lives for one operation and sees one press; opened for none it finds no press's rows.</summary>
public sealed class PressRunDbContext(DbContextOptions<PressRunDbContext> options) : DbContext(options), IDataProtectionKeyContext
{
    /// <summary>Keys that protect cookies and links, shared by all nodes.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>Everybody with an account.</summary>
    public DbSet<User> Users => Set<User>();

    internal PressId Press { get; set; }

    /// <summary>Where days are counted.</summary>
    internal TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    internal DbSet<MembershipRow> Memberships => Set<MembershipRow>();

    internal DbSet<InvitationRow> Invitations => Set<InvitationRow>();

    internal DbSet<ApiKeyRow> ApiKeys => Set<ApiKeyRow>();

    internal DbSet<SessionRow> Sessions => Set<SessionRow>();

    internal DbSet<PasswordCodeRow> PasswordCodes => Set<PasswordCodeRow>();

    internal DbSet<AttemptRow> Attempts => Set<AttemptRow>();

    internal DbSet<PressRow> Presses => Set<PressRow>();

    internal DbSet<TitleRow> Titles => Set<TitleRow>();

    internal DbSet<EditionRow> Editions => Set<EditionRow>();

    internal DbSet<PartRow> Parts => Set<PartRow>();

    internal DbSet<StockRow> Stocks => Set<StockRow>();

    internal DbSet<ShopRow> Shops => Set<ShopRow>();

    internal DbSet<PriceListRow> PriceLists => Set<PriceListRow>();

    internal DbSet<MailerRow> Mailers => Set<MailerRow>();

    internal DbSet<PostageServiceRow> PostageServices => Set<PostageServiceRow>();

    internal DbSet<ChannelRow> Channels => Set<ChannelRow>();

    internal DbSet<BenchRow> Benches => Set<BenchRow>();

    internal DbSet<BenchLimitsRow> BenchLimits => Set<BenchLimitsRow>();

    internal DbSet<RunPlanRow> RunPlans => Set<RunPlanRow>();

    internal DbSet<PlanStockRow> PlanStocks => Set<PlanStockRow>();

    internal DbSet<CopyMovementRow> CopyMovements => Set<CopyMovementRow>();

    internal DbSet<EditionCopiesRow> EditionCopies => Set<EditionCopiesRow>();

    internal DbSet<QuoteRow> Quotes => Set<QuoteRow>();

    internal DbSet<QuoteMarkRow> QuoteMarks => Set<QuoteMarkRow>();

    internal DbSet<QuoteLinkRow> QuoteLinks => Set<QuoteLinkRow>();

    internal DbSet<QuoteEventRow> QuoteEvents => Set<QuoteEventRow>();

    internal DbSet<TitleSumsRow> TitleSums => Set<TitleSumsRow>();

    internal DbSet<TitleOutlookRow> TitleOutlooks => Set<TitleOutlookRow>();

    internal DbSet<MailRow> Mails => Set<MailRow>();

    internal DbSet<HomeRow> Homes => Set<HomeRow>();

    internal DbSet<EditionClaimsRow> EditionClaims => Set<EditionClaimsRow>();

    internal DbSet<EditionPaymentRow> EditionPayments => Set<EditionPaymentRow>();

    internal DbSet<FixNoteRow> FixNotes => Set<FixNoteRow>();

    internal DbSet<TallyRow> Tallies => Set<TallyRow>();

    internal DbSet<TallyEntryRow> TallyEntries => Set<TallyEntryRow>();

    internal DbSet<DraftRow> Drafts => Set<DraftRow>();

    /// <inheritdoc/>
    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        KeepToOnePress();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc/>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        KeepToOnePress();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<PressId>().HaveConversion<PressIdConverter>();
        configurationBuilder.Properties<Length>().HaveConversion<LengthConverter>();
        configurationBuilder.Properties<Mass>().HaveConversion<MassConverter>();
        configurationBuilder.Properties<PaperWeight>().HaveConversion<PaperWeightConverter>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>();
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(PressRunDbContext).Assembly);
        foreach (var entity in modelBuilder.Model.GetEntityTypes().Where(entity => typeof(IOfPress).IsAssignableFrom(entity.ClrType)))
        {
            entity.SetQueryFilter(OfThisPress(entity.ClrType));
        }
    }

    // row => row.PressId == this.Press; the context stands as a constant, which EF Core replaces by the one that runs the query.
    private LambdaExpression OfThisPress(Type row)
    {
        var parameter = Expression.Parameter(row, "row");
        var own = Expression.Property(parameter, nameof(IOfPress.PressId));
        var wanted = Expression.Property(Expression.Constant(this), nameof(Press));
        return Expression.Lambda(Expression.Equal(own, wanted), parameter);
    }

    private void KeepToOnePress()
    {
        foreach (var entry in ChangeTracker.Entries<IOfPress>())
        {
            if (entry.State == EntityState.Added && entry.Entity.PressId == default)
            {
                entry.Entity.PressId = Press;
            }

            if (entry.State != EntityState.Unchanged && entry.Entity.PressId != Press)
            {
                throw new InvalidOperationException($"A row of another press was to be written: {entry.Metadata.DisplayName()}.");
            }
        }
    }
}
