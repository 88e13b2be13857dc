using PressRun.Data.Presses;
using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Support;

/// <summary>A server that remembers drafts only as long as the test runs.</summary>
public sealed class KeptNowhere : IServerDrafts
{
    public Dictionary<DraftKey, string> Kept { get; } = [];

    public Task KeepAsync(PressId press, DraftKey key, string text)
    {
        Kept[key] = text;
        return Task.CompletedTask;
    }

    public Task<IReadOnlyDictionary<string, string>> OfSubjectAsync(PressId press, DraftKey key) => Task.FromResult<IReadOnlyDictionary<string, string>>(
        Kept.Where(draft => draft.Key.Kind == key.Kind && draft.Key.SubjectId == key.SubjectId).ToDictionary(draft => draft.Key.Field, draft => draft.Value));

    public Task DropAsync(PressId press, DraftKey key)
    {
        Kept.Remove(key);
        return Task.CompletedTask;
    }
}
