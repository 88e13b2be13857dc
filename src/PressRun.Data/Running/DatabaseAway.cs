using System.Net.Sockets;
using Npgsql;

namespace PressRun.Data.Running;

/// <summary>The database has not answered for a while; nobody is kept waiting for it. It is looked for, and the next request after it is back is served.</summary>
public sealed class DatabaseAwayException : Exception
{
    /// <summary>It is away.</summary>
    public DatabaseAwayException()
        : this("The database does not answer.")
    {
    }

    /// <summary>It is away, in other words.</summary>
    public DatabaseAwayException(string message)
        : base(message)
    {
    }

    /// <summary>It is away, as something else has shown.</summary>
    public DatabaseAwayException(string message, Exception cause)
        : base(message, cause)
    {
    }
}

/// <summary>Tells a database that is away from what else may go wrong.</summary>
public static class DatabaseAway
{
    /// <summary>True where something failed because the database had no room to write it down.</summary>
    public static bool IsFull(Exception? exception) => exception switch
    {
        null => false,
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } => true,
        _ => IsFull(exception.InnerException),
    };

    /// <summary>True where something failed because the database is not reached, is starting or stopping, takes no more connections or has no room; whatever the
    /// framework wrapped around it.</summary>
    public static bool IsWhy(Exception? exception) => exception switch
    {
        null => false,
        DatabaseAwayException => true,
        PostgresException told => told.SqlState
            is PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow or PostgresErrorCodes.TooManyConnections
                or PostgresErrorCodes.DiskFull,
        NpgsqlException { InnerException: IOException or SocketException or TimeoutException } => true,
        _ => IsWhy(exception.InnerException),
    };
}
