using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Conversions;

/// <summary>Text of a whole document, as it stands in a job file, and back.</summary>
/// <param name="Write">Document to text.</param>
/// <param name="Read">Text to document.</param>
internal sealed record JobFileShape<T>(Func<T, string> Write, Func<string, T> Read);

internal static class JobFileShape
{
    private const string Nameless = "";

    /// <summary>A price list without the shop's name, which stands in the shop's own row.</summary>
    public static JobFileShape<Shop> PriceList { get; } = new(
        shop => Contract.Text(json => ShopWriter.WritePriceListMembers(json, shop, Contract.NoCurrency)),
        text => Contract.Read(text, (element, path, problems) => ShopBlock.ReadPriceList(element, path, Nameless, null, problems)));

    /// <summary>Bench rates.</summary>
    public static JobFileShape<BenchRates> Bench { get; } = new(
        bench => Contract.Text(json => BenchWriter.WriteMembers(json, bench, Contract.NoCurrency)),
        text => Contract.Read(text, BenchBlock.Read));

    /// <summary>A service's table.</summary>
    public static JobFileShape<PostageService> Service { get; } = new(
        service => Contract.Text(json => MailWriter.WriteMembers(json, service, Contract.NoCurrency)),
        text => Contract.Read(text, MailBlock.ReadService));

    /// <summary>Keeps a property as one document: <c>json</c> and not <c>jsonb</c>, which would sort keys, and the order in which a price list names
    /// its sheets decides between equals. Documents never change, so another one is known by its reference.</summary>
    public static PropertyBuilder<T> HasJobFileShape<T>(this PropertyBuilder<T> property, JobFileShape<T> shape)
        where T : class =>
        property.HasColumnType("json").HasConversion(
            document => shape.Write(document),
            text => shape.Read(text),
            new ValueComparer<T>((left, right) => ReferenceEquals(left, right), document => document.GetHashCode(), document => document));
}
