using PressRun.Data.Import.Tables;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries;

/// <summary>How the cells of a press's tables are read and written for a viewer.</summary>
public static class LibraryManners
{
    /// <summary>The viewer's decimal mark and the press's units.</summary>
    public static CellManners Of(PressView press) => new(press.Format.Culture, press.Format.Units, press.Format.Currency.MinorDigits);
}
