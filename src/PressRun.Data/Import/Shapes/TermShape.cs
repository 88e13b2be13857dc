using System.Globalization;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Shapes;

/// <summary>One of the single figures and words of a price list: set-ups, minimum, tax, cartons, what is sent.</summary>
/// <param name="Key">Its name in files.</param>
/// <param name="Title">What it is called on screen.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Get">Its value in a list; null where there is none.</param>
/// <param name="Set">The list with another value; null takes it out.</param>
public sealed record Term(string Key, string Title, CellKind Kind, Func<Shop, object?> Get, Func<Shop, object?, Shop> Set)
{
    /// <summary>A sentence that explains it; null where the title says enough.</summary>
    public string? Note { get; init; }

    /// <summary>What a list lacks before this can be said of it; null where it lacks nothing.</summary>
    public Func<Shop, string?>? Lacks { get; init; }

    /// <summary>The title with the unit of a number without one.</summary>
    public string? UnitOf(CellManners manners) => Kind.UnitOf(manners);

    /// <summary>The value as text; empty where there is none.</summary>
    public string Text(Shop list, CellManners manners) => Get(list) is { } value ? Kind.Write(value, manners) : "";

    /// <summary>The list with what was typed, or what would be right.</summary>
    public (Shop? List, string? Rule) Typed(Shop list, string text, CellManners manners)
    {
        if (text.Trim().Length == 0)
        {
            return (Set(list, null), null);
        }

        var read = Kind.Read(text.Trim(), manners);
        return read.Rule is { } rule ? (null, rule) : (Set(list, read.Value), null);
    }
}

/// <summary>The terms of a price list in the order in which a shop tells them.</summary>
public static class Terms
{
    /// <summary>Key of the goods value from which delivery is free.</summary>
    public const string FreeFrom = "delivery.freeFrom";

    /// <summary>What is said where delivery would be free from a value on and has no price before it.</summary>
    public const string DeliveryNeedsPrice =
        "First write what delivery costs, in the table Delivery or for each further kg: this is stored then. Where delivery never costs anything, leave it empty.";

    private static readonly NumberRule LeadDays = JobRules.Days;

    /// <summary>Charges for taking on work.</summary>
    public static IReadOnlyList<Term> SetUps { get; } =
    [
        Amount("setup.order", "An order", list => list.SetUp.Order, (list, amount) => list with { SetUp = list.SetUp with { Order = amount } }),
        Amount("setup.edition", "An edition", list => list.SetUp.Edition, (list, amount) => list with { SetUp = list.SetUp with { Edition = amount } }),
        Amount("setup.part", "A part", list => list.SetUp.Part, (list, amount) => list with { SetUp = list.SetUp with { Part = amount } }),
    ];

    /// <summary>How the shop works.</summary>
    public static IReadOnlyList<Term> Manners { get; } =
    [
        new("collates", "Collates", new ChoiceCell<Collating>(
                ("never", Collating.Never), ("one paper only", Collating.SameStock), ("always", Collating.Always), ("sameStock", Collating.SameStock)),
            list => list.Collates, (list, value) => list with { Collates = (Collating?)value ?? Collating.Never }),
        new("layout", "Lays out", new ChoiceCell<Layout>(
                ("whichever is best", Layout.Best), ("the same piece over a sheet", Layout.StepAndRepeat), ("different pieces on a sheet", Layout.CutAndStack),
                ("full sheets, the rest repeated", Layout.Combined), ("best", Layout.Best), ("stepAndRepeat", Layout.StepAndRepeat),
                ("cutAndStack", Layout.CutAndStack), ("combined", Layout.Combined)),
            list => list.Layout, (list, value) => list with { Layout = (Layout?)value ?? Layout.Best }),
        new("delivers", "Sends", new ChoiceCell<Delivered>(
                ("flat sheets", Delivered.FlatSheets), ("cut pieces", Delivered.CutPieces), ("untrimmed copies", Delivered.UntrimmedCopies),
                ("trimmed copies", Delivered.TrimmedCopies)),
            list => list.Delivers, (list, value) => list with { Delivers = (Delivered?)value }),
        new("spoilage", "Spoils", Cells.PercentBelowAll, list => Unless0(list.Spoilage), (list, value) => list with { Spoilage = (decimal?)value ?? 0m })
        {
            Note = "Of its work, where the press makes good what is lacking.",
        },
        new("quantities", "Sells only", new QuantitiesCell(), list => list.Quantities.Count == 0 ? null : list.Quantities,
            (list, value) => list with { Quantities = (IReadOnlyList<int>?)value ?? [] })
        {
            Note = "Copies, rising: 25, 50, 100. Empty where any number will do.",
        },
    ];

    /// <summary>What is worked out on the order as a whole.</summary>
    public static IReadOnlyList<Term> Order { get; } =
    [
        Amount("order.minimum", "Least goods value", list => list.Order.Minimum, (list, amount) => list with { Order = list.Order with { Minimum = amount } }),
        new("order.taxRate", "Tax", Cells.Percent, list => Unless0(list.Order.TaxRate),
            (list, value) => list with { Order = list.Order with { TaxRate = (decimal?)value ?? 0m } }),
        new("order.taxOnDelivery", "Tax on delivery", Cells.YesNo, list => list.Order.TaxOnDelivery,
            (list, value) => list with { Order = list.Order with { TaxOnDelivery = (bool?)value ?? false } }),
        new("order.leadDays", "Days to arrival", new NumberCell(LeadDays), list => list.Order.LeadDays == 0 ? null : (decimal)list.Order.LeadDays,
            (list, value) => list with { Order = list.Order with { LeadDays = (int)((decimal?)value ?? 0m) } }),
        new("carton.capacity", "A carton holds", new MassCell(JobRules.CartonCapacity), list => list.Order.Carton?.Capacity, SetCapacity),
        new("carton.tare", "and weighs empty", new MassCell(JobRules.MassOrNone), list => list.Order.Carton?.Tare,
            (list, value) => list.Order.Carton is { } carton ? list with { Order = list.Order with { Carton = carton with { Tare = (Mass?)value ?? Mass.Zero } } } : list)
        {
            Note = "Counts where the contents are given.",
        },
        new("delivery.perFurtherKg", "Each further kg", Cells.Money, list => list.Order.Delivery?.PerFurtherKilogram,
            (list, value) => WithDelivery(list, delivery => delivery with { PerFurtherKilogram = (decimal?)value })),
        new(FreeFrom, "Delivery free from goods of", Cells.Money, list => list.Order.Delivery?.FreeFrom,
            (list, value) => WithDelivery(list, delivery => delivery with { FreeFrom = (decimal?)value }))
        {
            Lacks = list => HasDeliveryPrice(list) ? null : DeliveryNeedsPrice,
        },
    ];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Term> All { get; } = [.. SetUps, .. Manners, .. Order];

    /// <summary>True where the list says what delivery costs.</summary>
    public static bool HasDeliveryPrice(Shop list) => list.Order.Delivery is { Steps.Count: > 0 } or { PerFurtherKilogram: not null };

    /// <summary>The list with other delivery steps.</summary>
    public static Shop WithDeliverySteps(Shop list, IReadOnlyList<MassStep> steps) => WithDelivery(list, delivery => delivery with { Steps = steps });

    // Delivery is there as long as anything of it is; a free-from alone prices nothing and still is kept for the steps to come.
    private static Shop WithDelivery(Shop list, Func<Delivery, Delivery> change)
    {
        var changed = change(list.Order.Delivery ?? new Delivery([], null, null));
        return list with
        {
            Order = list.Order with { Delivery = changed is { Steps.Count: 0, PerFurtherKilogram: null, FreeFrom: null } ? null : changed },
        };
    }

    private static Shop SetCapacity(Shop list, object? value) => list with
    {
        Order = list.Order with { Carton = value is Mass capacity ? new Carton(capacity, list.Order.Carton?.Tare ?? Mass.Zero) : null },
    };

    private static Term Amount(string key, string title, Func<Shop, decimal> get, Func<Shop, decimal, Shop> set) =>
        new(key, title, Cells.Money, list => Unless0(get(list)), (list, value) => set(list, (decimal?)value ?? 0m));

    private static decimal? Unless0(decimal number) => number == 0m ? null : number;
}

/// <summary>The only quantities that a shop sells: whole numbers, rising.</summary>
public sealed class QuantitiesCell : CellKind
{
    private const string Rule = "Write whole numbers of copies, rising, parted by commas or spaces, such as 25, 50, 100.";

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var quantities = new List<int>();
        foreach (var word in text.Split([',', ';', ' ', '\u00A0'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (!int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var quantity)
                || !JobRules.SoldQuantity.Holds(quantity)
                || (quantities.Count > 0 && quantity <= quantities[^1]))
            {
                return CellRead.Refused(Rule);
            }

            quantities.Add(quantity);
        }

        return CellRead.Of(quantities);
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => string.Join(' ', (IReadOnlyList<int>)value);
}
