using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace PressRun.Data;

/// <summary>Two that write the same thing at once, of which the database takes one.</summary>
internal static class Collision
{
    /// <summary>True where this one came second.</summary>
    public static bool Is(DbUpdateException exception) => exception.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation };
}
