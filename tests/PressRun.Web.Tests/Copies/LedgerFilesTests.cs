using PressRun.Web.Copies;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Copies;

public sealed class LedgerFilesTests
{
    // Files of before say it so, and those of whoever reads another language have to say it so too.
    [Fact]
    public void A_printing_is_called_in_files_what_it_is_called_in_English() =>
        Assert.Equal(Enumerable.Range(1, 12).Select(Words.Printing), Enumerable.Range(1, 12).Select(LedgerFiles.InFiles));
}
