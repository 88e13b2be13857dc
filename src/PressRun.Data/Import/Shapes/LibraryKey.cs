using PressRun.Data.Titles;

namespace PressRun.Data.Import.Shapes;

/// <summary>What may stand only once in a library's table: an id, or where a row has none yet, a name.</summary>
internal static class LibraryKey
{
    public static (string Key, int Column) Of(string id, string name, int nameColumn) => (id.Length > 0 ? "#" + id : SearchText.Fold(name), nameColumn);
}
