using System.Text.Json;
using PressRun.Engine.Selling;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads ways of selling.</summary>
public static class ChannelBlock
{
    private const string Rule = "Write channels as a list of { \"id\", \"name\", \"price\", \"mix\" } and the like.";

    private static readonly NumberRule CopiesPerOrder =
        new("Write how many copies an order has, a whole number from 1 to 1,000,000.", 1m, 1_000_000m, IsWhole: true);

    /// <summary>Reads the member <c>channels</c> of a block; ids must differ.</summary>
    /// <param name="block">The block that holds it.</param>
    /// <param name="mailerIds">Ids that channels may refer to; null where that cannot be told.</param>
    /// <param name="most">Most channels.</param>
    public static IReadOnlyList<Channel> ReadAll(JsonBlock block, IReadOnlySet<string>? mailerIds, int most = int.MaxValue)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        return block.List("channels", Need.May, Rule, (element, path) =>
        {
            var channel = Read(element, path, mailerIds, block.Problems);
            if (channel is { Id.Length: > 0 })
            {
                Keys.CheckOnce(taken, channel.Id, path.Member("id"), channel.Id, "Another channel has this id already; ids must differ.", block.Problems);
            }

            return channel;
        }, most);
    }

    /// <summary>Reads one channel.</summary>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static Channel? Read(JsonElement element, JsonPath path, IReadOnlySet<string>? mailerIds, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var id = block.Text("id", Need.Must, JobRules.Id) ?? string.Empty;
        var channel = new Channel(
            id,
            block.Text("name", Need.May, JobRules.Name) ?? id,
            block.Number("price", JobRules.Amount) ?? 0m,
            block.Flag("priceIncludesTax") ?? false,
            block.Number("taxRate", JobRules.Rate) ?? 0m,
            block.Number("tradeDiscount", JobRules.Rate) ?? 0m,
            block.Number("feeRate", JobRules.RateBelowOne) ?? 0m,
            block.Number("feeFixed", JobRules.Amount) ?? 0m,
            block.Count("copiesPerOrder", CopiesPerOrder) ?? 1,
            block.Text("mailer", Need.May, JobRules.Id),
            block.Text("postageRegion", Need.May, JobRules.Id),
            block.Number("postageCharged", JobRules.Amount) ?? 0m,
            block.Number("mix", JobRules.Mix) ?? 0m);
        Keys.CheckKnown(channel.MailerId, mailerIds, path.Member("mailer"), "mailer", problems);
        block.Close();
        return channel;
    }
}
