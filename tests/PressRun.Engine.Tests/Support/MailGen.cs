using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Support;

/// <summary>Random channels with the mailers and services they post by.</summary>
internal static class MailGen
{
    private const string Region = "home";

    private static Gen<Mailer> Mailer =>
        from length in Gen.Int[150, 400]
        from width in Gen.Int[100, 300]
        from thickness in Gen.Int[0, 30]
        from grams in Gen.Int[5, 80]
        from price in JobGen.FinePrice
        select new Mailer("board", "Board-backed", Mm(length), Mm(width), Mm(thickness / 10m), G(grams), price);

    private static Gen<PostageService> Service(string id, int largest) =>
        from prices in JobGen.Money.Array[1, 4]
        from days in Gen.Int[-400, 20]
        from least in Gen.Int[0, 160]
        select new PostageService(
            id, id, Region, Date.AddDays(days), Mm(largest), Mm(largest * 2 / 3), Mm(largest / 10), least > 140 ? Mm(least) : null, null, null,
            [.. prices.Order().Select((price, index) => new MassStep(G(largest * (index + 1) / 2), price))]);

    private static Gen<Channel> Channel(string id) =>
        from price in JobGen.Money
        from includesTax in Gen.Bool
        from rates in JobGen.Rate.Array[3]
        from fixedFee in JobGen.FinePrice
        from copies in Gen.Int[1, 6]
        from posts in Gen.Int[0, 2]
        from charged in JobGen.Money
        from mix in Gen.Int[0, 5]
        select new Channel(
            id, id, price, includesTax, rates[0], 2m * rates[1], rates[2] / 3m, fixedFee, copies,
            posts > 0 ? "board" : null, posts > 1 ? Region : null, posts > 1 ? charged : 0m, mix);

    public static Gen<(IReadOnlyList<Mailer> Mailers, IReadOnlyList<PostageService> Services, IReadOnlyList<Channel> Channels)> Any =>
        from mailer in Mailer
        from letter in Service("letter", 240)
        from large in Service("large", 360)
        from parcel in Service("parcel", 1200)
        from channels in Gen.Select(Channel("table"), Channel("post"), Channel("shops"), (a, b, c) => new[] { a, b, c })
        from count in Gen.Int[0, 3]
        select ((IReadOnlyList<Mailer>)[mailer], (IReadOnlyList<PostageService>)[letter, large, parcel], (IReadOnlyList<Channel>)channels[..count]);
}
