using PressRun.Data.Presses;

namespace PressRun.Data.Tests.Fixtures;

internal static class Kept
{
    /// <summary>A thing as a library has it now; as it never was there where it has none like it.</summary>
    public static async Task<LibraryItem<T>> KeptAsync<T>(this LibraryStore<T> store, PressId press, T item)
        where T : class =>
        (await store.ListAsync(press, archived: true)).FirstOrDefault(kept => store.IdentityOf(kept.Item) == store.IdentityOf(item)) ?? new LibraryItem<T>(item, false, 0);
}
