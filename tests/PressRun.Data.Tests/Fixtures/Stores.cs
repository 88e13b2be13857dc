using Microsoft.Extensions.Logging.Abstractions;
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
using PressRun.Data.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>All stores on one database.</summary>
internal sealed class Stores : IAsyncDisposable
{
    private readonly Func<Task> giveBack;

    private Stores(Database database, Func<Task> giveBack, bool signIn, TimeProvider time)
    {
        this.giveBack = giveBack;
        Database = database;
        var rows = new PressDatabase(database, time, new PressGuard(signIn, time));
        Presses = new PressStore(rows);
        Shelf = new ShelfQuery(rows);
        Titles = new TitleStore(rows);
        Editions = new EditionStore(rows);
        Plans = new PlanStore(rows);
        JobFiles = new JobFileStore(rows);
        Ledger = new CopiesLedgerStore(rows);
        Outlooks = new OutlookStore(rows);
        Fixes = new FixNoteStore(rows);
        Payouts = new PayoutStore(rows);
        Tallies = new TallyStore(rows);
        Quotes = new QuoteStore(rows);
        Shared = new SharedQuoteStore(rows, new MailWriting(new PressGuard(signIn, time), isOn: true, "maker@example.org"));
        Outbox = new MailOutbox(rows);
        Stocks = new StockStore(rows);
        Shops = new ShopStore(rows);
        PriceLists = new PriceListStore(rows);
        Mailers = new MailerStore(rows);
        Services = new PostageServiceStore(rows);
        Channels = new ChannelStore(rows);
        Bench = new BenchStore(rows);
        BenchLimits = new BenchLimitsStore(rows);
        Drafts = new DraftStore(rows);
        Archives = new PressArchiveStore(rows);
        People = new PeopleStore(rows);
        Removals = new AccountRemoval(rows);
        PressRemovals = new PressRemoval(rows);
        Invitations = new InvitationStore(rows);
        Keys = new ApiKeyStore(rows);
        Sessions = new SessionStore(rows);
        Attempts = new AttemptStore(rows);
        PasswordCodes = new PasswordCodeStore(rows);
    }

    public Database Database { get; }

    public MailOutbox Outbox { get; }

    public PayoutStore Payouts { get; }

    public PressStore Presses { get; }

    public ShelfQuery Shelf { get; }

    public TitleStore Titles { get; }

    public EditionStore Editions { get; }

    public PlanStore Plans { get; }

    public JobFileStore JobFiles { get; }

    public CopiesLedgerStore Ledger { get; }

    public OutlookStore Outlooks { get; }

    public FixNoteStore Fixes { get; }

    public TallyStore Tallies { get; }

    public QuoteStore Quotes { get; }

    public SharedQuoteStore Shared { get; }

    public StockStore Stocks { get; }

    public ShopStore Shops { get; }

    public PriceListStore PriceLists { get; }

    public MailerStore Mailers { get; }

    public PostageServiceStore Services { get; }

    public ChannelStore Channels { get; }

    public BenchStore Bench { get; }

    public BenchLimitsStore BenchLimits { get; }

    public DraftStore Drafts { get; }

    public PressArchiveStore Archives { get; }

    public PeopleStore People { get; }

    public AccountRemoval Removals { get; }

    public PressRemoval PressRemovals { get; }

    public InvitationStore Invitations { get; }

    public ApiKeyStore Keys { get; }

    public SessionStore Sessions { get; }

    public AttemptStore Attempts { get; }

    public PasswordCodeStore PasswordCodes { get; }

    public static Stores On(string connectionString) => On(connectionString, () => Task.CompletedTask, signIn: false, TimeProvider.System);

    /// <summary>Stores on a migrated database without rows, which the next test gets when these are disposed of.</summary>
    /// <param name="postgres">Where.</param>
    /// <param name="signIn">True for stores that ask who is visiting; false for those of single-user mode.</param>
    /// <param name="time">The clock; the machine's where none is given.</param>
    public static async Task<Stores> NewAsync(PostgresFixture postgres, bool signIn = false, TimeProvider? time = null)
    {
        var connectionString = await postgres.BorrowDatabaseAsync();
        return On(connectionString, () => postgres.GiveBackAsync(connectionString), signIn, time ?? TimeProvider.System);
    }

    /// <summary>A context for one press, to look at rows.</summary>
    public PressRunDbContext Context(PressId press)
    {
        var context = Database.CreateDbContext();
        context.Press = press;
        return context;
    }

    public async ValueTask DisposeAsync()
    {
        await Database.DisposeAsync();
        await giveBack();
    }

    private static Stores On(string connectionString, Func<Task> giveBack, bool signIn, TimeProvider time)
    {
        var database = new Database(NullLoggerFactory.Instance, TimeProvider.System);
        database.Open(connectionString);
        return new Stores(database, giveBack, signIn, time);
    }
}
