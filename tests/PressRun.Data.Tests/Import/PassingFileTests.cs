using PressRun.Data.Import.Csv;

namespace PressRun.Data.Tests.Import;

public class PassingFileTests
{
    [Fact]
    public async Task It_is_read_more_than_once_at_a_time_and_lies_in_no_folder_whatever_becomes_of_the_server()
    {
        var folder = Directory.CreateTempSubdirectory("pressrun-passing");
        try
        {
            using var file = PassingFile.In(folder.FullName);
            await file.FillAsync(new MemoryStream("name,copies\nMarsh Letters,3\nHeron,4\n"u8.ToArray()), TestContext.Current.CancellationToken);
            var source = CsvSource.Open(file.Read, TestContext.Current.CancellationToken);

            // On Windows a file that is open has a name, which goes with it.
            Assert.Equal(OperatingSystem.IsWindows() ? 1 : 0, folder.GetFileSystemInfos().Length);
            Assert.Equal(["name Marsh Letters Heron", "copies 3 4"], source.Rows().Zip(source.Rows()).Aggregate(new[] { "", "" }, (told, both) => [$"{told[0]} {both.First.Cells[0]}".Trim(), $"{told[1]} {both.Second.Cells[1]}".Trim()]));
            file.Dispose();
            Assert.Throws<ObjectDisposedException>(() => source.Rows().Count());
            Assert.Empty(folder.GetFileSystemInfos());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
