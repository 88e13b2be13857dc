using System.Globalization;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>A part of the bill while it is typed.</summary>
public sealed class BillRow
{
    /// <summary>Tells the rows apart.</summary>
    public Guid Id { get; } = Guid.NewGuid();

    /// <summary>Who.</summary>
    public string Name { get; set; } = "";

    /// <summary>True where they carry one amount, whatever the bill.</summary>
    public bool IsFixed { get; set; }

    /// <summary>Shares, or the amount, as typed.</summary>
    public string Carries { get; set; } = "1";

    /// <summary>Chosen where it is a share, in the page and in a draft.</summary>
    public const string AsShares = "false";

    /// <summary>Chosen where it is one amount, in the page and in a draft.</summary>
    public const string AsAmount = "true";

    /// <summary>What is chosen, as text: a list to choose from cannot hold true and false themselves.</summary>
    public string Reckoned
    {
        get => IsFixed ? AsAmount : AsShares;
        set => IsFixed = value == AsAmount;
    }

    /// <summary>Fields of a row, as many as a draft of it has.</summary>
    public const int Fields = 3;

    /// <summary>The fields in the order in which they stand.</summary>
    public IReadOnlyList<string> Texts => [Name, Carries, Reckoned];

    /// <summary>A row from the fields of a draft.</summary>
    public static BillRow Of(IReadOnlyList<string> texts) => new() { Name = texts[0], Carries = texts[1], Reckoned = texts[2] };

    /// <summary>The parts of a bill; null with a sentence where what somebody carries cannot be read.</summary>
    public static (IReadOnlyList<BillPart>? Parts, string? Problem) Read(IEnumerable<BillRow> rows, CultureInfo culture)
    {
        var parts = new List<BillPart>();
        foreach (var row in rows)
        {
            if (Typed.Number(row.Carries, culture) is not { } number)
            {
                return (null, row.Name.Length == 0 ? Say($"Write what this part carries as a number.") : Say($"Write what {Apart.Of(row.Name)} carries as a number."));
            }

            parts.Add(row.IsFixed ? new BillPart.Fixed(row.Name.Trim(), number) : new BillPart.Share(row.Name.Trim(), number));
        }

        return (parts, null);
    }

    /// <summary>What each row comes to; null with a sentence where a row cannot be read, or the bill not be cut so.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="total">The whole bill, in the currency.</param>
    /// <param name="format">How figures are written.</param>
    public static (IReadOnlyList<decimal>? Amounts, string? Problem) Split(IEnumerable<BillRow> rows, decimal total, PressFormat format)
    {
        var (parts, problem) = Read(rows, format.Culture);
        if (parts is null)
        {
            return (null, problem);
        }

        var split = BillSplit.Of(total, parts, format.Currency);
        return split.Succeeded ? (split.Value.Amounts, null) : (null, SayWhole(split.Problems[0].Rule));
    }
}

/// <summary>What the maker decides before a plan is frozen, while it is typed.</summary>
public sealed class FreezeForm
{
    /// <summary>The quote's id, so that pressing twice freezes once.</summary>
    public Guid Id { get; } = Guid.CreateVersion7();

    /// <summary>Last day on which it can be agreed to.</summary>
    public DateOnly Until { get; set; }

    /// <summary>How much its readers see.</summary>
    public QuoteShows Shows { get; set; }

    /// <summary>To all readers.</summary>
    public string Note { get; set; } = "";

    /// <summary>Who carries what.</summary>
    public List<BillRow> Bill { get; } = [];

    /// <summary>Starts from the terms of the quote that is replaced, so that only what differs is typed.</summary>
    public static FreezeForm From(QuoteView? before, DateOnly until)
    {
        var form = new FreezeForm { Until = until };
        if (before is not null)
        {
            (form.Shows, form.Note) = (before.Facts.Shows, before.Facts.Note);
            form.Bill.AddRange(before.Facts.Bill.Select(part => new BillRow
            {
                Name = part.Name,
                IsFixed = part is BillPart.Fixed,
                Carries = part is BillPart.Fixed given ? before.Format.Money(given.Amount) : before.Format.Number(((BillPart.Share)part).Weight, 6),
            }));
        }

        return form;
    }

    /// <summary>The terms; null with a sentence where something cannot be read.</summary>
    public (QuoteTerms? Terms, string? Problem) Read(CultureInfo culture)
    {
        var (parts, problem) = BillRow.Read(Bill, culture);
        return (parts is null ? null : new QuoteTerms(Until, Shows, Note, parts), problem);
    }
}
