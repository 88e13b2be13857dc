using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile;

/// <summary>The ranges of the contract with the sentences that tell them, each in one place. They are wide enough for any press and narrow
/// enough that no product of them leaves what a decimal holds.</summary>
public static class JobRules
{
    /// <summary>Largest job file, in bytes.</summary>
    public const int MostBytes = 1_048_576;

    /// <summary>Most entries of a list in a job file that names no other number. A press's own libraries may be longer.</summary>
    public const int MostEntries = 500;

    /// <summary>Most channels of a job file: each looks at every service.</summary>
    public const int MostChannels = 100;

    private const decimal LeastGrammage = 1m;
    private const decimal MostGrammage = 10_000m;

    /// <summary>What a paper weight must be.</summary>
    public const string PaperWeightSentence =
        "Write a paper weight from 1 to 10,000 g/m² with its unit: \"120 gsm\", or pounds with the kind of paper, \"80 lb text\" "
        + "(bond, writing, ledger, text, book, offset, cover, index, tag or bristol).";

    // Of a thing that is handled, and of a limit that things are held against.
    private static readonly Mass MostMass = Mass.FromKilograms(1_000m);
    private static readonly Mass MostLimit = Mass.FromKilograms(1_000_000_000m);

    /// <summary>An id: not blank.</summary>
    public static TextRule Id { get; } = new("Write an id: text on one line, not blank, at most 200 characters.", 200, false);

    /// <summary>A name: may be empty.</summary>
    public static TextRule Name { get; } = new("Write a text on one line, at most 1,000 characters.", 1000, true);

    /// <summary>An amount of money, 0 or more; more decimals than the currency has are kept.</summary>
    public static NumberRule Amount { get; } =
        new("Write an amount of money, 0 or more, as a number or a decimal string such as \"12.50\".", 0m, 1_000_000_000_000m);

    /// <summary>A rate, 0 to 1.</summary>
    public static NumberRule Rate { get; } = new("Write a rate as a fraction from 0 to 1: 0.05 is five per cent.", 0m, 1m);

    /// <summary>A rate below 1.</summary>
    public static NumberRule RateBelowOne { get; } =
        new("Write a rate as a fraction from 0 up to but not including 1: 0.05 is five per cent.", 0m, 1m, WithoutMost: true);

    /// <summary>A probability that is neither sure nor impossible.</summary>
    public static NumberRule Confidence { get; } =
        new("Write a confidence between 0 and 1, both excluded, such as 0.95.", 0m, 1m, WithoutLeast: true, WithoutMost: true);

    /// <summary>A time in minutes or seconds.</summary>
    public static NumberRule Time { get; } = new("Write a time from 0 to 1,000,000 as a number; the key names its unit.", 0m, 1_000_000m);

    /// <summary>The weight of a channel among all.</summary>
    public static NumberRule Mix { get; } = new("Write a share of the sales, 0 or more; the shares are divided by their sum.", 0m, 1_000_000m);

    /// <summary>Specific volume of a paper in cm³/g.</summary>
    public static NumberRule Bulk { get; } =
        new("Write a bulk in cm³/g above 0 and at most 100, such as 1.3.", 0m, 100m, WithoutLeast: true);

    /// <summary>Copies wanted.</summary>
    public static NumberRule Copies { get; } = Whole("Write a whole number of copies from 1 to 1,000,000.", 1m, Job.MostCopies);

    /// <summary>Copies given away.</summary>
    public static NumberRule CopiesOrNone { get; } = Whole("Write a whole number of copies from 0 to 1,000,000.", 0m, Job.MostCopies);

    /// <summary>Copies that a shop sells at once.</summary>
    public static NumberRule SoldQuantity { get; } = Whole("Write a whole number of copies from 1 to 1,000,000,000.", 1m, 1_000_000_000m);

    /// <summary>Pages of a part.</summary>
    public static NumberRule Pages { get; } = Whole("Write a whole number of pages from 1 to 10,000.", 1m, Job.MostPages);

    /// <summary>Which printing.</summary>
    public static NumberRule Printing { get; } = Whole("Write a whole number from 1 to 10,000: the first printing is 1.", 1m, 10_000m);

    /// <summary>First unit of a price step.</summary>
    public static NumberRule StepFrom { get; } = Whole("Write the first unit this price holds for, a whole number from 1.", 1m, 1_000_000_000_000m);

    /// <summary>Days.</summary>
    public static NumberRule Days { get; } = Whole("Write a whole number of days from 0 to 10,000.", 0m, 10_000m);

    /// <summary>Side of a page or sheet.</summary>
    public static LengthRule Side { get; } = new(
        "Write a length from 1 mm to 10 m with its unit, such as \"5.5 in\", \"5 1/2 in\" or \"140 mm\".",
        Length.FromMillimetres(1m),
        Length.FromMillimetres(10_000m));

    /// <summary>A trim, margin or gutter.</summary>
    public static LengthRule Allowance { get; } =
        new("Write a length from 0 mm to 1 m with its unit, such as \"0.125 in\", \"1/8 in\" or \"3 mm\".", Length.Zero, Length.FromMillimetres(1_000m));

    /// <summary>A thickness that cannot be zero.</summary>
    public static LengthRule Thickness { get; } = new(
        "Write a thickness above 0 and at most 1 m with its unit, such as \"120 um\" or \"0.12 mm\".",
        Length.Zero,
        Length.FromMillimetres(1_000m),
        WithoutLeast: true);

    /// <summary>A mailer's side or thickness.</summary>
    public static LengthRule MailerSide { get; } =
        new("Write a length from 0 mm to 10 m with its unit, such as \"10 in\" or \"250 mm\".", Length.Zero, Length.FromMillimetres(10_000m));

    /// <summary>A limit of a postal service.</summary>
    public static LengthRule PostageLimit { get; } =
        new("Write a length from 0 mm to 1,000 m with its unit, such as \"240 mm\".", Length.Zero, Length.FromMillimetres(1_000_000m));

    /// <summary>A mass that may be zero.</summary>
    public static MassRule MassOrNone { get; } =
        new("Write a mass from 0 g to 1,000 kg with its unit, such as \"80 g\", \"2.5 kg\", \"13 oz\" or \"1.2 lb\".", Mass.Zero, MostMass);

    /// <summary>A mass that cannot be zero.</summary>
    public static MassRule MassAboveNone { get; } = new(
        "Write a mass above 0 and at most 1,000 kg with its unit, such as \"80 g\", \"2.5 kg\", \"13 oz\" or \"1.2 lb\".", Mass.Zero, MostMass, WithoutLeast: true);

    /// <summary>A mass up to which a price holds.</summary>
    public static MassRule MassLimit { get; } =
        new("Write a mass above 0 with its unit, such as \"80 g\", \"2.5 kg\", \"13 oz\" or \"1.2 lb\".", Mass.Zero, MostLimit, WithoutLeast: true);

    /// <summary>What a carton holds.</summary>
    public static MassRule CartonCapacity { get; } =
        new("Write a mass of at least 1 g with its unit, such as \"12 kg\" or \"26 lb\".", Mass.FromGrams(1m), MostLimit);

    /// <summary>True where a paper weight keeps its rule.</summary>
    public static bool IsPaperWeight(PaperWeight weight) => weight.GramsPerSquareMetre is >= LeastGrammage and <= MostGrammage;

    private static NumberRule Whole(string sentence, decimal least, decimal most) => new(sentence, least, most, IsWhole: true);
}
