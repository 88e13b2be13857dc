using System.Data.Common;
using Microsoft.Extensions.Options;
using PressRun.Data.Mail;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Web.Running;

namespace PressRun.Web.Mail;

/// <summary>Sends what the outbox holds: at once where something has happened, and again and again where the mail server was away.</summary>
public sealed partial class MailSender : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(20);

    private readonly MailSettings? settings;
    private readonly MailOutbox outbox;
    private readonly IQuoteNews news;
    private readonly TimeProvider time;
    private readonly ILogger<MailSender> logger;
    private readonly SemaphoreSlim woken = new(0, 1);

    /// <summary>Reads the settings.</summary>
    /// <exception cref="StartRefusedException">They do not fit together.</exception>
    public MailSender(IOptions<PressRunOptions> options, IConfiguration configuration, MailOutbox outbox, IQuoteNews news, TimeProvider time, ILogger<MailSender> logger)
    {
        (this.outbox, this.news, this.time, this.logger) = (outbox, news, time, logger);
        settings = MailSettings.Of(options.Value) is { } read ? read with { Home = PublicAddress.Of(configuration) } : null;
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        woken.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings is null)
        {
            return;
        }

        news.QuotesChanged += Wake;
        try
        {
            while (true)
            {
                await SendDueAsync(stoppingToken);
                await woken.WaitAsync(Pause, stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            return;
        }
        finally
        {
            news.QuotesChanged -= Wake;
        }
    }

    private async Task SendDueAsync(CancellationToken cancel)
    {
        try
        {
            while (await outbox.TakeAsync(cancel) is { } due)
            {
                await SendAsync(due, cancel);
            }
        }
        catch (Exception away) when (DatabaseAway.IsWhy(away))
        {
            // That it is away has been told, and mail waits in it.
        }
        catch (Exception away) when (away is DbException || away.InnerException is DbException)
        {
            LogAway(logger, away.GetType().Name);
        }
        catch (Exception fault) when (!cancel.IsCancellationRequested)
        {
            // Mail is the least that a server does: a fault of it stops nothing else.
            LogFault(logger, fault);
        }
    }

    private async Task SendAsync(DueMail due, CancellationToken cancel)
    {
        var outcome = await new MailPost(settings!).SendAsync(due, time.GetUtcNow(), cancel);
        switch (outcome.Fate)
        {
            case MailFate.Sent:
                await outbox.DoneAsync(due, CancellationToken.None);
                LogSent(logger, due.Whole.Quote.Number);
                break;
            case MailFate.Later when await outbox.LaterAsync(due, CancellationToken.None):
                LogLater(logger, due.Whole.Quote.Number, outcome.Why);
                break;
            default:
                await outbox.DoneAsync(due, CancellationToken.None);
                LogNever(logger, due.Whole.Quote.Number, outcome.Why);
                break;
        }
    }

    private void Wake(PressId press)
    {
        try
        {
            woken.Release();
        }
        catch (SemaphoreFullException)
        {
            // It is to wake up already.
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Mail about quote {Quote} was taken by the mail server")]
    private static partial void LogSent(ILogger logger, int quote);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail about quote {Quote} waits for the mail server: {Why}")]
    private static partial void LogLater(ILogger logger, int quote, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail about quote {Quote} was given up: {Why}")]
    private static partial void LogNever(ILogger logger, int quote, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "Mail could not be looked after; it is tried again")]
    private static partial void LogFault(ILogger logger, Exception fault);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail waits for the database: {Why}")]
    private static partial void LogAway(ILogger logger, string why);
}
