using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.Engine.Selling;

namespace PressRun.JobFile.Writing;

/// <summary>Writes ways of selling.</summary>
public static class ChannelWriter
{
    /// <summary>Writes the members of a channel into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Channel channel, Currency currency)
    {
        json.WriteString("id", channel.Id);
        json.WriteString("name", channel.Name);
        json.Amount("price", channel.Price, currency);
        json.WriteBoolean("priceIncludesTax", channel.PriceIncludesTax);
        json.Number("taxRate", channel.TaxRate);
        json.Number("tradeDiscount", channel.TradeDiscount);
        json.Number("feeRate", channel.FeeRate);
        json.Amount("feeFixed", channel.FeeFixed, currency);
        json.WriteNumber("copiesPerOrder", channel.CopiesPerOrder);
        json.Text("mailer", channel.MailerId);
        json.Text("postageRegion", channel.PostageRegion);
        json.Amount("postageCharged", channel.PostageCharged, currency);
        json.Number("mix", channel.Mix);
    }
}
