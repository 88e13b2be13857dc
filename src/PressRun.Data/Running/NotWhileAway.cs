using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace PressRun.Data.Running;

/// <summary>Opens no connection while the database is known to be away, so that whoever asks hears so at once: accounts and keys ask by contexts of
/// their own.</summary>
internal sealed class NotWhileAway(Reach reach) : DbConnectionInterceptor
{
    public override InterceptionResult ConnectionOpening(DbConnection connection, ConnectionEventData eventData, InterceptionResult result) => Demand(result);

    public override ValueTask<InterceptionResult> ConnectionOpeningAsync(
        DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default) => new(Demand(result));

    private InterceptionResult Demand(InterceptionResult result) => reach.IsAway ? throw new DatabaseAwayException() : result;
}
