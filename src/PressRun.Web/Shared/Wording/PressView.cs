using System.Globalization;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;

namespace PressRun.Web.Shared.Wording;

/// <summary>The press that a page is about, and how its figures are written for this viewer.</summary>
/// <param name="Record">Its settings.</param>
/// <param name="Format">Its units and currency in the viewer's locale.</param>
public sealed record PressView(PressRecord Record, PressFormat Format)
{
    /// <summary>What the press calls itself.</summary>
    public string Name => Record.Name;

    /// <summary>The currency by its own name where the platform knows it, else its code.</summary>
    public string CurrencyName => CurrencyNames.Of(Record.Currency);

    /// <summary>What the viewer may do in it. Stores hold everybody to it; pages go by it so as to offer nothing that would be refused.</summary>
    public PressRole Role { get; init; } = PressRole.Owner;

    /// <summary>True where the viewer may change the press's books, plans, libraries and ledger.</summary>
    public bool MayEdit => Role >= PressRole.Editor;

    /// <summary>True where the viewer looks after the press's people and keys.</summary>
    public bool IsOwners => Role >= PressRole.Owner;

    /// <summary>The address of a file of this press. It names the press, as the browser may have gone over to another one in another tab, where a quote of the same number is another quote.</summary>
    /// <param name="address">The file's, with its own query where it has one.</param>
    public string File(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return $"{address}{(address.Contains('?', StringComparison.Ordinal) ? '&' : '?')}press={Record.Id}";
    }

    /// <summary>The view of a press for a viewer's culture.</summary>
    /// <exception cref="InvalidOperationException">The press's currency is not in ISO 4217's list.</exception>
    public static PressView Of(PressRecord record, CultureInfo culture)
    {
        var currency = Currency.Find(record.Currency) ?? throw new InvalidOperationException($"No currency {record.Currency}.");
        return new PressView(record, new PressFormat(currency, record.Units, culture));
    }
}
