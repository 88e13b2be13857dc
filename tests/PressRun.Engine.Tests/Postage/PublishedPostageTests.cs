using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Postage;

/// <summary>
/// Published postal tables entered as a press would enter them. What the tables add that a service here cannot say is left out: the aspect
/// ratio that makes a square letter nonmachinable (POS-14), the sum of all sides (POS-43, in part), what counts as a book (POS-40, POS-42).
/// </summary>
public sealed class PublishedPostageTests
{
    [Theory]
    [InlineData(6.5, 6.5, 0.25, 1.5, "flat", 0.97)] // POS-01. USPS Postal Bulletin 22212 (2007), example 1.
    public void Prices_of_2007(double length, double height, double thickness, double ounces, string service, double price) =>
        Assert.Equal((service, (decimal)price), Taken(Usps(0.41m, 0.80m, 0.17m), In((decimal)length), In((decimal)height), In((decimal)thickness), Mass.FromOunces((decimal)ounces)));

    [Theory]
    [InlineData(9, 4, 0.1, 1.5, "letter", 0.59)] // POS-09. USPS prices effective 12 May 2008, ysci.org.
    [InlineData(12, 9, 0.3, 6, "flat", 1.68)] // POS-11. The same list.
    public void Prices_of_2008(double length, double height, double thickness, double ounces, string service, double price) =>
        Assert.Equal((service, (decimal)price), Taken(Usps(0.42m, 0.83m, 0.17m), In((decimal)length), In((decimal)height), In((decimal)thickness), Mass.FromOunces((decimal)ounces)));

    [Theory]
    [InlineData(9, 4, 0.1, 2.1, "letter", 0.93)] // POS-03. USPS Notice 123, effective 31 May 2015.
    [InlineData(12, 9, 0.3, 5.0, "flat", 1.86)] // POS-04. The same notice.
    [InlineData(12, 9, 0.3, 5.01, "flat", 2.08)] // POS-05. The same notice.
    [InlineData(8.5, 5.5, 0.2, 3.6, "flat", 1.64)] // POS-08. The same notice with DMM 101.1.1: a letter over 3.5 oz pays the flat price; computed.
    public void Prices_of_2015(double length, double height, double thickness, double ounces, string service, double price) =>
        Assert.Equal((service, (decimal)price), Taken(Usps(0.49m, 0.98m, 0.22m), In((decimal)length), In((decimal)height), In((decimal)thickness), Mass.FromOunces((decimal)ounces)));

    [Theory]
    [InlineData(8.5, 5.5, 0.12, 2.0, "letter")] // POS-13. DMM 101, archive of 2021-01-24: limits read, instance computed.
    [InlineData(11.5, 6.125, 0.25, 3.5, "letter")] // POS-17. The same: equal to every limit.
    [InlineData(8.5, 5.5, 0.26, 3, "flat")] // POS-18. The same: too thick for a letter.
    [InlineData(15, 12, 0.75, 13, "flat")] // POS-20. The same: equal to every limit of a flat.
    [InlineData(9, 6, 0.76, 9, null)] // POS-22. The same: neither letter nor flat.
    [InlineData(9.5, 4.125, 0.1, 1, "letter")] // POS-23. The same: a number 10 envelope.
    public void Letters_and_flats_are_told_apart_by_the_limits_of_the_manual(double length, double height, double thickness, double ounces, string? service) =>
        Assert.Equal(service, Choose(Usps(0.55m, 1m, 0.20m), In((decimal)length), In((decimal)height), In((decimal)thickness), Mass.FromOunces((decimal)ounces)).ServiceId);

    [Fact]
    public void A_flat_a_hundredth_of_an_inch_too_thick_is_refused_by_just_that()
    {
        // POS-22.
        var refused = Choose(Usps(0.55m, 1m, 0.20m), In(9), In(6), In(0.76m), Mass.FromOunces(9m)).Refused;
        Assert.Contains(new RefusedService("flat", PostageLimit.Thickness, 0.254m), refused);
    }

    [Theory]
    [InlineData(210, 148, 4, 90, "letter")] // POS-24. Royal Mail limits (Ofcom's help page; antalis.co.uk): limits read, instance computed.
    [InlineData(210, 148, 6, 90, "large letter")] // POS-26. The same.
    [InlineData(210, 148, 4, 101, "large letter")] // POS-28. The same.
    [InlineData(297, 210, 26, 400, "parcel")] // POS-29. The same.
    public void Royal_Mail_formats_are_told_apart_by_thickness_and_mass(int length, int width, int thickness, int grams, string service) =>
        Assert.Equal(service, Choose(RoyalMail, Mm(length), Mm(width), Mm(thickness), G(grams)).ServiceId);

    [Fact]
    public void A_large_letter_of_101_grams_pays_the_second_step()
    {
        // POS-45. Royal Mail second class large letter, printed beside letters at 1.65 and 0.85 (ae.envelopespackaging.com); other steps from memory.
        Assert.Equal(("large letter", 2.10m), Taken(RoyalMail, Mm(300), Mm(220), Mm(10), G(101)));
        Assert.Equal(1.55m, Taken(RoyalMail, Mm(300), Mm(220), Mm(10), G(100)).Price);
    }

    [Fact]
    public void A_booklet_of_half_a_letter_sheet_is_standard_lettermail_in_Canada()
    {
        // POS-31. Canada Post, lettermail size requirements: limits read, instance computed; prices from memory.
        PostageService[] services =
        [
            Service("standard", 245, 156, 5, [(30, 1.15m), (50, 1.40m)]) with { MinLength = Mm(140), MinWidth = Mm(90), MinThickness = Mm(0.18m) },
            Service("other", 380, 270, 20, [(100, 2.09m), (200, 3.43m), (300, 4.78m), (400, 5.47m), (500, 5.88m)]),
        ];
        Assert.Equal("standard", Choose(services, Mm(210), Mm(148), Mm(4), G(50)).ServiceId);
        Assert.Equal("other", Choose(services, Mm(210), Mm(148), Mm(4), G(51)).ServiceId);
    }

    [Theory]
    [InlineData(4.235, 5)] // POS-33. DMM 173.1.2, archive of 2014-07-28: every started pound is charged.
    [InlineData(0.4, 1)] // POS-35. The same: at least one pound; computed.
    public void Book_rate_charges_every_started_pound(double pounds, int charged)
    {
        var steps = Enumerable.Range(1, 70).Select(pound => new MassStep(Mass.FromPounds(pound), pound)).ToList();
        Assert.Equal(charged, Taken([Service("media", null, null, null, []) with { Steps = steps }], In(12), In(9), In(2), Mass.FromPounds((decimal)pounds)).Price);
    }

    [Fact]
    public void A_packet_of_letter_post_keeps_the_longest_side_and_the_mass_of_the_world_convention()
    {
        // POS-43. Korea Post, Letter-post Regulations, article 203: longest side 600 mm, 2 kg, and all sides together 900 mm, which a service
        // here does not limit; computed.
        PostageService[] services = [Service("letter post", 600, null, null, [(2000, 9m)])];
        Assert.Equal("letter post", Choose(services, Mm(400), Mm(300), Mm(190), G(1900)).ServiceId);
        Assert.Null(Choose(services, Mm(601), Mm(100), Mm(50), G(1900)).ServiceId);
    }

    private static PostageService[] RoyalMail { get; } =
    [
        Service("letter", 240, 165, 5, [(100, 0.85m)]),
        Service("large letter", 353, 250, 25, [(100, 1.55m), (250, 2.10m), (500, 2.50m), (750, 2.70m)]),
        Service("parcel", 450, 350, 160, [(2000, 3.75m)]),
    ];

    // Letters up to 11.5 × 6.125 × 0.25 in and 3.5 oz, flats up to 15 × 12 × 0.75 in and 13 oz, a price an ounce.
    private static PostageService[] Usps(decimal letter, decimal flat, decimal further) =>
    [
        Inches("letter", 11.5m, 6.125m, 0.25m, [.. new[] { 1m, 2m, 3m, 3.5m }.Select((ounces, index) => new MassStep(Mass.FromOunces(ounces), letter + (index * further)))]),
        Inches("flat", 15m, 12m, 0.75m, [.. Enumerable.Range(0, 13).Select(index => new MassStep(Mass.FromOunces(index + 1), flat + (index * further)))]),
    ];

    private static PostageService Inches(string id, decimal length, decimal width, decimal thickness, MassStep[] steps) =>
        Service(id, null, null, null, []) with { MaxLength = In(length), MaxWidth = In(width), MaxThickness = In(thickness), Steps = steps };

    private static PostageService Service(string id, int? length, int? width, int? thickness, (int Grams, decimal Price)[] steps) => new(
        id, id, "home", Date, Of(length), Of(width), Of(thickness), null, null, null, [.. steps.Select(step => new MassStep(G(step.Grams), step.Price))]);

    private static Length? Of(int? millimetres) => millimetres is { } value ? Mm(value) : null;

    private static PostageChoice Choose(PostageService[] services, Length length, Length width, Length thickness, Mass mass) => PostageTable.Choose(
        services, "post", new Mailer("piece", "Piece", length, width, Length.Zero, Mass.Zero, 0m), new CopyEstimate(mass, thickness, Length.Zero), 1);

    private static (string Service, decimal Price) Taken(PostageService[] services, Length length, Length width, Length thickness, Mass mass)
    {
        var choice = Choose(services, length, width, thickness, mass);
        return (choice.ServiceId!, choice.Price!.Value);
    }
}
