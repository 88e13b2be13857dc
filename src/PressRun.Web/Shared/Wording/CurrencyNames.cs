using System.Globalization;

namespace PressRun.Web.Shared.Wording;

/// <summary>Currencies in words, as the platform's locale data has them.</summary>
public static class CurrencyNames
{
    private static readonly Dictionary<string, string> ByCode = CultureInfo.GetCultures(CultureTypes.SpecificCultures)
        .Select(culture => culture.Name)
        .Distinct(StringComparer.Ordinal)
        .Select(name => new RegionInfo(name))
        .GroupBy(region => region.ISOCurrencySymbol, StringComparer.Ordinal)
        .ToDictionary(group => group.Key, group => group.First().CurrencyEnglishName, StringComparer.Ordinal);

    /// <summary>Such as <c>US Dollar</c>; the code itself where nothing is known.</summary>
    public static string Of(string code) => ByCode.TryGetValue(code, out var name) && name.Length > 0 ? name : code;
}
