using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace PressRun.Data.Running;

/// <summary>Hears of every statement that the database had no room for.</summary>
internal sealed class RoomWatch(Reach reach) : DbCommandInterceptor
{
    public override void CommandFailed(DbCommand command, CommandErrorEventData eventData) => Look(eventData.Exception);

    public override Task CommandFailedAsync(DbCommand command, CommandErrorEventData eventData, CancellationToken cancellationToken = default)
    {
        Look(eventData.Exception);
        return Task.CompletedTask;
    }

    private void Look(Exception fault)
    {
        if (DatabaseAway.IsFull(fault))
        {
            reach.HasNoRoom(fault.GetBaseException().Message);
        }
    }
}
