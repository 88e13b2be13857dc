using Microsoft.Net.Http.Headers;

namespace PressRun.Web.Running;

/// <summary>JSON as programs and the app's scripts send it: UTF-8 by its standard (RFC 8259, 8.1), whatever else the header says of it.</summary>
internal static class PlainJson
{
    /// <summary>True where a request's header names a media type of JSON, another alphabet than UTF-8 for none, and no compression.</summary>
    public static bool IsNamed(HttpRequest request) =>
        IsUnpacked(request) && MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && (type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase) || type.Suffix.Equals("json", StringComparison.OrdinalIgnoreCase))
        && (!type.Charset.HasValue || HeaderUtilities.RemoveQuotes(type.Charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase));

    /// <summary>True where a request's header names no kind of body and no compression.</summary>
    public static bool IsUnnamed(HttpRequest request) => IsUnpacked(request) && string.IsNullOrEmpty(request.ContentType);

    private static bool IsUnpacked(HttpRequest request) => request.Headers.ContentEncoding.Count == 0 || request.Headers.ContentEncoding == "identity";
}
