using System.Globalization;

namespace PressRun.Web.Shared.Wording;

/// <summary>Currencies in words, the commonest in the viewer's language, the rest in English as the platform's locale data has them.</summary>
public static class CurrencyNames
{
    private static readonly Dictionary<string, string> ByCode = CultureInfo.GetCultures(CultureTypes.SpecificCultures)
        .Select(culture => culture.Name)
        .Distinct(StringComparer.Ordinal)
        .Select(name => new RegionInfo(name))
        .GroupBy(region => region.ISOCurrencySymbol, StringComparer.Ordinal)
        .ToDictionary(group => group.Key, group => group.First().CurrencyEnglishName, StringComparer.Ordinal);

    /// <summary>Such as <c>US Dollar</c>; the code itself where nothing is known, or nothing in the viewer's language.</summary>
    public static string Of(string code) => code switch
    {
        "EUR" => Say($"Euro"),
        "USD" => Say($"US Dollar"),
        "GBP" => Say($"British Pound"),
        "CHF" => Say($"Swiss Franc"),
        "JPY" => Say($"Japanese Yen"),
        "CAD" => Say($"Canadian Dollar"),
        "AUD" => Say($"Australian Dollar"),
        "NZD" => Say($"New Zealand Dollar"),
        "SEK" => Say($"Swedish Krona"),
        "NOK" => Say($"Norwegian Krone"),
        "DKK" => Say($"Danish Krone"),
        "PLN" => Say($"Polish Zloty"),
        "CZK" => Say($"Czech Koruna"),
        _ => Language.Equals(Translation.Own) && ByCode.TryGetValue(code, out var name) && name.Length > 0 ? name : code,
    };
}
