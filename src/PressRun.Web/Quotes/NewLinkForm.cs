using System.Globalization;
using PressRun.Data.Quotes;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>A link while it is typed.</summary>
public sealed class NewLinkForm
{
    /// <summary>Whom it is for.</summary>
    public string Name { get; set; } = "";

    /// <summary>Last day on which it opens.</summary>
    public DateOnly Until { get; set; }

    /// <summary>Is asked to agree.</summary>
    public bool Agree { get; set; } = true;

    /// <summary>May write remarks.</summary>
    public bool Remark { get; set; } = true;

    /// <summary>May try other quantities.</summary>
    public bool MayTry { get; set; }

    /// <summary>Fewest copies that they may try, as typed.</summary>
    public string TryFrom { get; set; } = "";

    /// <summary>Most copies that they may try, as typed.</summary>
    public string TryTo { get; set; } = "";

    /// <summary>Place of their part of the bill, as chosen; empty for none.</summary>
    public string PartText { get; set; } = "";

    /// <summary>Their part of the bill; null for none.</summary>
    public int? Part => int.TryParse(PartText, NumberStyles.None, CultureInfo.InvariantCulture, out var part) ? part : null;

    /// <summary>What they may do, once it has been read.</summary>
    public LinkRights Rights { get; private set; } = new(null, null, false, false);

    /// <summary>A link that lasts as long as the quote, for the first one who carries a part and has no link yet. They may try what the plan itself
    /// compared.</summary>
    public static NewLinkForm For(QuoteView view, DateOnly today)
    {
        var next = view.Bill.FirstOrDefault(share => share.Name != view.Facts.Press && view.Whole.Links.All(link => link.Part != share.Index));
        return new NewLinkForm
        {
            Name = next?.Name ?? "",
            PartText = next?.Index.ToString(CultureInfo.InvariantCulture) ?? "",
            Until = view.Facts.Until < today ? today : view.Facts.Until,
            MayTry = view.Worked is { Curve: var compared } && compared.From < compared.To,
            TryFrom = view.Format.Count(view.Worked?.Curve.From ?? view.Quote.Quantity),
            TryTo = view.Format.Count(view.Worked?.Curve.To ?? view.Quote.Quantity),
        };
    }

    /// <summary>Reads what was typed; a sentence where it cannot be.</summary>
    public string? Read(CultureInfo culture)
    {
        var (from, to) = (Typed.Count(TryFrom, culture), Typed.Count(TryTo, culture));
        if (MayTry && (from is null || to is null))
        {
            return Say($"Write from how many to how many copies they may try.");
        }

        Rights = new LinkRights(MayTry ? from : null, MayTry ? to : null, Remark, Agree);
        return null;
    }
}
