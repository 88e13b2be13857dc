using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.Archive;
using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.Drafts;
using PressRun.Data.Fixes;
using PressRun.Data.Mail;
using PressRun.Data.Payouts;
using PressRun.Data.People;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;

namespace PressRun.Data.Running;

/// <summary>Registers the database and the stores.</summary>
public static class PressRunData
{
    /// <summary>The assembly that holds the migrations.</summary>
    public const string MigrationsAssembly = "PressRun.Migrations";

    /// <summary>Adds the stores, and the database they work on, which starts before and stops after everything else.</summary>
    public static IServiceCollection AddPressRunData(this IServiceCollection services, IConfiguration configuration)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.Configure<PressRunOptions>(configuration.GetSection(PressRunOptions.Section));
        services.AddSingleton<Database>();
        services.AddHostedService<DatabaseStart>();
        services.AddSingleton<IDbContextFactory<PressRunDbContext>>(provider => provider.GetRequiredService<Database>());
        services.AddScoped(provider => provider.GetRequiredService<Database>().CreateDbContext());
        services.AddSingleton<ServerNews>().AddHostedService(provider => provider.GetRequiredService<ServerNews>())
            .AddSingleton<IAccessNews>(provider => provider.GetRequiredService<ServerNews>())
            .AddSingleton<IQuoteNews>(provider => provider.GetRequiredService<ServerNews>());
        services.AddHostedService<Sweeping>();
        services.AddSingleton(provider => new PressGuard(
            provider.GetRequiredService<IOptions<PressRunOptions>>().Value.AsksToSignIn(), provider.GetRequiredService<TimeProvider>()));
        services.AddPeople();
        services.AddDataProtection().SetApplicationName("PressRun").PersistKeysToDbContext<PressRunDbContext>();
        return services.AddPressRunStores();
    }

    /// <summary>How every context of ours speaks to PostgreSQL.</summary>
    public static DbContextOptionsBuilder UsePressRun(this DbContextOptionsBuilder options, NpgsqlDataSource source) =>
        options.UseNpgsql(source, npgsql => npgsql.MigrationsAssembly(MigrationsAssembly)).UseSnakeCaseNamingConvention();

    private static IServiceCollection AddPressRunStores(this IServiceCollection services) => services
        .AddSingleton(provider => new PressDatabase(
            provider.GetRequiredService<Database>(), provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<PressGuard>()))
        .AddStore(database => new PressStore(database))
        .AddStore(database => new ShelfQuery(database))
        .AddStore(database => new TitleStore(database))
        .AddStore(database => new EditionStore(database))
        .AddStore(database => new PlanStore(database))
        .AddStore(database => new JobFileStore(database))
        .AddStore(database => new CopiesLedgerStore(database))
        .AddStore(database => new QuoteStore(database))
        .AddSingleton(provider => new SharedQuoteStore(
            provider.GetRequiredService<PressDatabase>(),
            new MailWriting(
                provider.GetRequiredService<PressGuard>(),
                provider.GetRequiredService<IOptions<PressRunOptions>>().Value is { SendsMail: true },
                provider.GetRequiredService<IOptions<PressRunOptions>>().Value.MailTo)))
        .AddStore(database => new MailOutbox(database))
        .AddStore(database => new PayoutStore(database))
        .AddStore(database => new OutlookStore(database))
        .AddStore(database => new FixNoteStore(database))
        .AddStore(database => new TallyStore(database))
        .AddStore(database => new StockStore(database))
        .AddStore(database => new ShopStore(database))
        .AddStore(database => new PriceListStore(database))
        .AddStore(database => new MailerStore(database))
        .AddStore(database => new PostageServiceStore(database))
        .AddStore(database => new ChannelStore(database))
        .AddStore(database => new BenchStore(database))
        .AddStore(database => new BenchLimitsStore(database))
        .AddStore(database => new DraftStore(database))
        .AddStore(database => new PressArchiveStore(database))
        .AddStore(database => new PeopleStore(database))
        .AddStore(database => new AccountRemoval(database))
        .AddStore(database => new PressRemoval(database))
        .AddStore(database => new InvitationStore(database))
        .AddStore(database => new ApiKeyStore(database))
        .AddStore(database => new SessionStore(database))
        .AddStore(database => new WaysInStore(database))
        .AddStore(database => new PasswordCodeStore(database))
        .AddStore(database => new AttemptStore(database));

    private static void AddPeople(this IServiceCollection services)
    {
        services.AddIdentityCore<User>(options =>
        {
            options.User.RequireUniqueEmail = true;
            options.User.AllowedUserNameCharacters = null!;
            options.Password = new PasswordOptions
            {
                RequiredLength = 1, RequireDigit = false, RequireLowercase = false, RequireNonAlphanumeric = false, RequireUppercase = false, RequiredUniqueChars = 1,
            };
        }).AddEntityFrameworkStores<PressRunDbContext>().AddPasswordValidator<PasswordRules>();
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = NormalPasswordHasher.Rounds);
        services.AddScoped<IPasswordHasher<User>, NormalPasswordHasher>();
        services.AddScoped<Accounts>();
        services.AddScoped<AccountPasskeys>();
    }

    private static IServiceCollection AddStore<T>(this IServiceCollection services, Func<PressDatabase, T> make)
        where T : class =>
        services.AddSingleton(provider => make(provider.GetRequiredService<PressDatabase>()));
}
