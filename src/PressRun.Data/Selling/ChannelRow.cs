using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Engine.Selling;

namespace PressRun.Data.Selling;

/// <summary>A way of selling. It holds no price: an edition's price is the same on every channel.</summary>
internal sealed class ChannelRow : ILibraryRow<Channel>
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public string Name { get; set; } = "";

    public bool PriceIncludesTax { get; set; }

    public decimal TaxRate { get; set; }

    public decimal TradeDiscount { get; set; }

    public decimal FeeRate { get; set; }

    public decimal FeeFixed { get; set; }

    public int CopiesPerOrder { get; set; }

    public string? MailerId { get; set; }

    public string? PostageRegion { get; set; }

    public decimal PostageCharged { get; set; }

    public decimal Mix { get; set; }

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public Channel ToItem() => new(
        Id, Name, 0m, PriceIncludesTax, TaxRate, TradeDiscount, FeeRate, FeeFixed, CopiesPerOrder, MailerId, PostageRegion, PostageCharged, Mix);

    public void Take(Channel item)
    {
        (Id, Name, PriceIncludesTax, TaxRate, TradeDiscount) = (item.Id, item.Name, item.PriceIncludesTax, item.TaxRate, item.TradeDiscount);
        (FeeRate, FeeFixed, CopiesPerOrder, Mix) = (item.FeeRate, item.FeeFixed, item.CopiesPerOrder, item.Mix);
        (MailerId, PostageRegion, PostageCharged) = (item.MailerId, item.PostageRegion, item.PostageCharged);
    }
}

internal sealed class ChannelRowConfiguration : IEntityTypeConfiguration<ChannelRow>
{
    public void Configure(EntityTypeBuilder<ChannelRow> builder)
    {
        builder.ConfigureLibrary<ChannelRow, Channel>("channels");
        builder.HasOne<MailerRow>().WithMany()
            .HasForeignKey(channel => new { channel.PressId, channel.MailerId }).OnDelete(DeleteBehavior.Restrict);
    }
}
