using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Npgsql;
using PressRun.Data;
using PressRun.Data.Running;

namespace PressRun.Migrations;

/// <summary>Lets <c>dotnet ef</c> read the model. It compares models and opens no connection.</summary>
public sealed class DesignTimeFactory : IDesignTimeDbContextFactory<PressRunDbContext>
{
    /// <inheritdoc/>
    public PressRunDbContext CreateDbContext(string[] args) =>
        new((DbContextOptions<PressRunDbContext>)new DbContextOptionsBuilder<PressRunDbContext>()
            .UsePressRun(NpgsqlDataSource.Create("Host=localhost")).Options);
}
