using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;

namespace PressRun.Data.Drafts;

/// <summary>What a draft belongs to: one person's typing on one subject.</summary>
/// <param name="Person">A key for the person, the same after a new start of the server.</param>
/// <param name="SubjectKind">What is edited, such as <c>edition</c>.</param>
/// <param name="SubjectId">Which one.</param>
public sealed record DraftSubject(string Person, string SubjectKind, string SubjectId);

/// <summary>Something typed that is not saved yet.</summary>
/// <param name="Field">Which field, such as <c>page.width</c>.</param>
/// <param name="Text">As typed, whether or not it makes sense yet.</param>
/// <param name="At">When it was typed.</param>
public sealed record Draft(string Field, string Text, DateTimeOffset At);

/// <summary>What people type, kept until it is saved, so that a lost connection or a new start of the server loses nothing. Drafts are their
/// writer's own, so whoever may read the press may keep them.</summary>
public sealed class DraftStore
{
    /// <summary>Most characters of one draft.</summary>
    public const int LongestText = 20_000;

    /// <summary>Most characters of each word by which a draft is found.</summary>
    public const int LongestKey = 200;

    /// <summary>Most drafts of one person in one press; the oldest go.</summary>
    public const int Most = 300;

    /// <summary>A draft that nobody came back to for so long is forgotten.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(90);

    /// <summary>The person of single-user mode.</summary>
    public const string OnlyPerson = "owner";

    private readonly PressDatabase database;

    internal DraftStore(PressDatabase database) => this.database = database;

    /// <summary>Keeps a draft; one typed earlier never replaces one typed later, in whatever order they arrive.</summary>
    /// <exception cref="ArgumentException">The text is longer than <see cref="LongestText"/>, or a word of its key than <see cref="LongestKey"/>.</exception>
    public async Task KeepAsync(PressId press, DraftSubject subject, Draft draft, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        if (draft.Text.Length > LongestText)
        {
            throw new ArgumentException($"A draft has at most {LongestText} characters.", nameof(draft));
        }

        if (new[] { subject.SubjectKind, subject.SubjectId, draft.Field }.Any(word => word.Length > LongestKey))
        {
            throw new ArgumentException($"What a draft is found by has at most {LongestKey} characters a word.", nameof(subject));
        }

        var at = draft.At.ToUniversalTime();
        await database.WriteAsync(
            press,
            db => db.Database.ExecuteSqlAsync(
                $"""
                INSERT INTO drafts (press_id, person, subject_kind, subject_id, field, text, at)
                VALUES ({press.Value}, {subject.Person}, {subject.SubjectKind}, {subject.SubjectId}, {draft.Field}, {draft.Text}, {at})
                ON CONFLICT (press_id, person, subject_kind, subject_id, field)
                DO UPDATE SET text = EXCLUDED.text, at = EXCLUDED.at WHERE drafts.at <= EXCLUDED.at;

                DELETE FROM drafts WHERE ctid IN (
                    SELECT ctid FROM drafts WHERE press_id = {press.Value} AND person = {subject.Person} ORDER BY at DESC OFFSET {Most})
                """,
                cancel),
            cancel,
            PressRole.Reader);
    }

    /// <summary>A person's drafts on a subject, by field.</summary>
    public async Task<IReadOnlyList<Draft>> OfSubjectAsync(PressId press, DraftSubject subject, CancellationToken cancel = default) =>
        await database.ReadAsync(
            press,
            db => Of(db, subject).OrderBy(row => row.Field).Select(row => new Draft(row.Field, row.Text, row.At)).ToListAsync(cancel),
            cancel);

    /// <summary>Drops a person's draft of one field, or of all fields of the subject; done once it is saved or thrown away.</summary>
    public async Task DropAsync(PressId press, DraftSubject subject, string? field = null, CancellationToken cancel = default) =>
        await database.WriteAsync(
            press, db => Of(db, subject).Where(row => field == null || row.Field == field).ExecuteDeleteAsync(cancel), cancel, PressRole.Reader);

    /// <summary>Takes out drafts that are old, and those of people who are not among their press's any more.</summary>
    public Task<int> SweepAsync(CancellationToken cancel = default)
    {
        var old = database.Now - Longest;
        return database.WriteServerAsync(
            db => db.Database.ExecuteSqlAsync(
                $"""
                DELETE FROM drafts WHERE at < {old} OR (person <> {OnlyPerson} AND NOT EXISTS (
                    SELECT 1 FROM memberships WHERE memberships.press_id = drafts.press_id AND memberships.user_id::text = drafts.person))
                """,
                cancel),
            cancel);
    }

    private static IQueryable<DraftRow> Of(PressRunDbContext db, DraftSubject subject) => db.Drafts.Where(row =>
        row.Person == subject.Person && row.SubjectKind == subject.SubjectKind && row.SubjectId == subject.SubjectId);
}
