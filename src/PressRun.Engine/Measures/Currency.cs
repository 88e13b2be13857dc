using System.Globalization;

namespace PressRun.Engine.Measures;

/// <summary>A currency by its ISO 4217 code, with the digits of its minor unit. All amounts of a job are in one currency.</summary>
/// <param name="Code">ISO 4217 alphabetic code, such as <c>USD</c>.</param>
/// <param name="MinorDigits">Decimal digits of the minor unit: 0 (JPY), 2 (USD), 3 (KWD) or 4 (CLF, UYW).</param>
public sealed record Currency(string Code, int MinorDigits)
{
    private static readonly Dictionary<string, Currency> Known = Load();

    /// <summary>One minor unit as an amount: 0.01 where the currency has two digits.</summary>
    public decimal MinorUnit { get; } = new(1, 0, 0, false, (byte)MinorDigits);

    /// <summary>All currencies of ISO 4217's list one that people pay in, by code.</summary>
    public static IReadOnlyCollection<Currency> All => Known.Values;

    /// <summary>The currency of a code (upper case), or null where ISO 4217 knows none.</summary>
    /// <param name="code">Three letters in upper case; in lower case none is found.</param>
    public static Currency? Find(string code) => Known.GetValueOrDefault(code);

    /// <summary>An amount rounded to the minor unit, halves away from zero.</summary>
    /// <param name="amount">In this currency, of either sign.</param>
    public decimal Round(decimal amount) => decimal.Round(amount, MinorDigits, MidpointRounding.AwayFromZero);

    /// <summary>An amount with exactly the digits of the minor unit, invariant: <c>305.83</c>.</summary>
    /// <param name="amount">In this currency, of either sign; rounded where it has more digits.</param>
    public string Format(decimal amount) => amount.ToString("F" + MinorDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    // ISO 4217:2015 list one. Two digits unless said otherwise; funds codes, metals and test codes are left out.
    private static Dictionary<string, Currency> Load()
    {
        const string twoDigits =
            "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK "
            + "DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT "
            + "LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN "
            + "QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS "
            + "VED VES WST XCD XCG YER ZAR ZMW ZWG";
        const string noDigits = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
        const string threeDigits = "BHD IQD JOD KWD LYD OMR TND";
        const string fourDigits = "CLF UYW";
        var known = new Dictionary<string, Currency>(StringComparer.Ordinal);
        foreach (var (codes, digits) in new[] { (twoDigits, 2), (noDigits, 0), (threeDigits, 3), (fourDigits, 4) })
        {
            foreach (var code in codes.Split(' '))
            {
                known.Add(code, new Currency(code, digits));
            }
        }

        return known;
    }
}
