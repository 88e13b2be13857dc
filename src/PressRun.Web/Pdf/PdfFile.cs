using System.Globalization;
using PdfSharp.Pdf;

namespace PressRun.Web.Pdf;

/// <summary>A document as it is sent.</summary>
internal static class PdfFile
{
    /// <summary>Its bytes. The library writes its dates by the calendar of whoever reads; a file's are of the Gregorian one.</summary>
    public static byte[] Of(PdfDocument document)
    {
        var reader = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            using var stream = new MemoryStream();
            document.Save(stream, closeStream: false);
            return stream.ToArray();
        }
        finally
        {
            CultureInfo.CurrentCulture = reader;
        }
    }
}
