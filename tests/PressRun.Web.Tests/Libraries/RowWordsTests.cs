using System.Globalization;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Web.Libraries.Files;

namespace PressRun.Web.Tests.Libraries;

public class RowWordsTests
{
    public static TheoryData<string, string> Tables
    {
        get
        {
            var list = PriceListTable.For([], []);
            return new()
            {
                { new StockShape().Name, "paper" },
                { new MailerShape().Name, "mailer" },
                { new PostageShape().Name, "postage service" },
                { new ChannelShape([]).Name, "way of selling" },
                { LedgerShape.Of([], printing => printing.ToString(CultureInfo.InvariantCulture), [], default).Name, "sale" },
                { list.Paper.Name, "paper price" },
                { list.Print.Name, "print price" },
                { list.Sheets.Name, "sheet" },
                { list.Books.Name, "whole-book price" },
                { list.Finishing.Name, "finishing" },
                { list.Offers.Name, "paper with prices" },
                { RowWords.WholeList, "line of a whole price list, as PressRun saves it" },
            };
        }
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Rows_of_each_table_that_takes_files_are_counted_in_words(string name, string one)
    {
        var table = new ImportTable("all", name, Array.Empty<Column>());
        Assert.Equal($"1 {one}", table.Counted(1, count => count.ToString(CultureInfo.InvariantCulture)));
        Assert.Equal($"2 {table.Told}", table.Counted(2, count => count.ToString(CultureInfo.InvariantCulture)));
    }
}
