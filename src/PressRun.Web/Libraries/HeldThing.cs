using PressRun.Data;

namespace PressRun.Web.Libraries;

/// <summary>Something that is in use and therefore stays in its library.</summary>
/// <param name="Item">The thing.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Where">What uses it, in words.</param>
public sealed record HeldThing<T>(LibraryItem<T> Item, string Name, IReadOnlyList<string> Where)
    where T : class;
