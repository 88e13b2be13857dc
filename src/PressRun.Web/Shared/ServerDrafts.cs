using PressRun.Data.Access;
using PressRun.Data.Drafts;
using PressRun.Data.Presses;

namespace PressRun.Web.Shared;

/// <summary>Drafts as the server keeps them, so that what was typed on one device is found on the next.</summary>
public interface IServerDrafts
{
    /// <summary>Keeps what was typed in a field.</summary>
    Task KeepAsync(PressId press, DraftKey key, string text);

    /// <summary>What is kept of a subject's fields, by field.</summary>
    Task<IReadOnlyDictionary<string, string>> OfSubjectAsync(PressId press, DraftKey key);

    /// <summary>Drops what is kept of a field.</summary>
    Task DropAsync(PressId press, DraftKey key);
}

/// <summary>Names a field in words such as <c>edition/018f.../page.width</c>.</summary>
/// <param name="Kind">What is edited.</param>
/// <param name="SubjectId">Which one.</param>
/// <param name="Field">Which field of it.</param>
public readonly record struct DraftKey(string Kind, string SubjectId, string Field)
{
    /// <summary>Reads a key; null for one without a subject, which only the browser keeps.</summary>
    public static DraftKey? Read(string key) => key.Split('/', 3) is [var kind, var subject, var field] ? new DraftKey(kind, subject, field) : null;
}

/// <summary>Drafts in the database.</summary>
public sealed class ServerDrafts(DraftStore store, TimeProvider time) : IServerDrafts
{
    // In single-user mode there is one person.
    private static string Person => Visiting.Now is Visitor.Person person ? person.UserId.ToString() : DraftStore.OnlyPerson;

    /// <inheritdoc/>
    public Task KeepAsync(PressId press, DraftKey key, string text) => text.Length > DraftStore.LongestText || text.Contains('\0')
        ? Task.CompletedTask
        : store.KeepAsync(press, Subject(key), new Draft(key.Field, text, time.GetUtcNow()));

    /// <inheritdoc/>
    public async Task<IReadOnlyDictionary<string, string>> OfSubjectAsync(PressId press, DraftKey key) =>
        (await store.OfSubjectAsync(press, Subject(key))).ToDictionary(draft => draft.Field, draft => draft.Text);

    /// <inheritdoc/>
    public Task DropAsync(PressId press, DraftKey key) => store.DropAsync(press, Subject(key), key.Field);

    private static DraftSubject Subject(DraftKey key) => new(Person, key.Kind, key.SubjectId);
}
