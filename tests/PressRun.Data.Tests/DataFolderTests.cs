using Microsoft.Extensions.Logging.Abstractions;
using PressRun.Data.PrivatePostgres;
using PressRun.Data.Running;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests;

/// <summary>The umask is the whole process's, so nothing runs beside this.</summary>
[CollectionDefinition(DisableParallelization = true)]
public sealed class OwnUmask;

[Collection<OwnUmask>]
public sealed class DataFolderTests
{
    private const UnixFileMode OwnersFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const int WithholdsNothing = 0;
    private const int WithholdsAllFromOthers = 63; // 077 in octal.

    [Theory]
    [InlineData(UnixFileMode.None, false)]
    [InlineData(UnixFileMode.GroupRead, true)]
    [InlineData(UnixFileMode.OtherWrite | UnixFileMode.OtherExecute, true)]
    public async Task A_folder_that_was_there_is_left_as_it_is_and_told_of_where_others_may_look_into_it(UnixFileMode others, bool wide)
    {
        using var own = new ServerFolder();
        Directory.CreateDirectory(own.Path);
        File.SetUnixFileMode(own.Path, OwnersFolder | others);

        using var folder = await DataFolder.OpenAsync(own.Path, TestContext.Current.CancellationToken);

        Assert.Equal(wide, folder.IsWide);
        Assert.Equal(OwnersFolder | others, File.GetUnixFileMode(own.Path));
    }

    [Fact]
    public async Task A_password_that_a_full_disk_left_empty_is_made_anew_while_there_are_no_data()
    {
        using var own = new ServerFolder();
        Directory.CreateDirectory(own.Path);
        await File.WriteAllTextAsync(Path.Combine(own.Path, "database-password"), "", TestContext.Current.CancellationToken);
        using var folder = await DataFolder.OpenAsync(own.Path, TestContext.Current.CancellationToken);

        Assert.Equal(48, folder.Password().Length);
    }

    [Fact]
    public async Task What_cannot_be_written_is_not_taken_for_another_apps()
    {
        using var own = new ServerFolder();
        Directory.CreateDirectory(own.Path);
        File.CreateSymbolicLink(Path.Combine(own.Path, "in-use"), "/nowhere/at-all");

        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => DataFolder.OpenAsync(own.Path, TestContext.Current.CancellationToken));

        Assert.DoesNotContain("Another PressRun", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(WithholdsNothing)]
    [InlineData(WithholdsAllFromOthers)]
    public async Task Whatever_the_umask_nobody_but_the_servers_user_reads_the_data(int umask)
    {
        using var folder = new ServerFolder();
        var before = ServerFolder.SetUmask(umask);
        try
        {
            await using var server = await PrivateServer.StartAsync(
                new PressRunOptions { DataFolder = folder.Path }, [], TimeProvider.System, NullLogger.Instance, CancellationToken.None);

            // Root's server runs as another user, who must come through the folder that holds the data.
            var throughOnly = Environment.IsPrivilegedProcess ? UnixFileMode.GroupExecute | UnixFileMode.OtherExecute : UnixFileMode.None;
            Assert.Equal(OwnersFolder | throughOnly, File.GetUnixFileMode(folder.Path));
            Assert.Equal(OwnersFolder, File.GetUnixFileMode(folder.Data));
            Assert.Equal(OwnersFolder, File.GetUnixFileMode(Path.Combine(folder.Path, "socket")));
            Assert.All(Directory.GetFiles(folder.Path), file => Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(file) & ~OwnersFolder));
        }
        finally
        {
            _ = ServerFolder.SetUmask(before);
        }
    }
}
