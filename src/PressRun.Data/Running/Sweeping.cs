using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;
using PressRun.Data.Drafts;
using PressRun.Data.People;

namespace PressRun.Data.Running;

/// <summary>Takes out, at the start and then time and again, what strangers can make rows of and what nobody will ask for any more: counts of
/// tries whose time is over, sign-ins that have ended, invitations that were used or are over, and drafts that are old or whose writer has left. Where several nodes do it at once, each finds less to do.</summary>
internal sealed partial class Sweeping(AttemptStore attempts, SessionStore sessions, InvitationStore invitations, DraftStore drafts, TimeProvider time, ILogger<Sweeping> logger) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, time);
        do
        {
            try
            {
                await attempts.SweepAsync(stoppingToken);
                await sessions.SweepAsync(stoppingToken);
                await invitations.SweepAsync(stoppingToken);
                await drafts.SweepAsync(stoppingToken);
            }
            catch (Exception away) when (DatabaseAway.IsWhy(away))
            {
                // That it is away has been told; old rows can wait.
            }
            catch (Exception exception) when (exception is NpgsqlException or IOException or InvalidOperationException)
            {
                LogLeft(logger, exception.Message);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Old tries, sign-ins, invitations and drafts could not be taken out, and will be later: {Reason}")]
    private static partial void LogLeft(ILogger logger, string reason);
}
