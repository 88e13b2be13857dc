using System.Globalization;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>A line that is being written down: the text of its fields, and what is wrong with each. It has one id until it is written.</summary>
/// <param name="view">The ledger it goes into.</param>
/// <param name="format">How the viewer writes figures.</param>
public sealed class LedgerEntry(CopiesView view, PressFormat format)
{
    /// <summary>Fields by the names that they have in the line.</summary>
    public const string Day = "day", Kind = "kind", Copies = "copies", Channel = "channel", Amount = "amount", Note = "note";

    private readonly Dictionary<string, string> typed = [];
    private readonly Dictionary<string, string> problems = [];

    // True while the day was typed for a line before this one.
    private bool dayOfLineBefore;

    /// <summary>By which the line is written once, however often it is sent.</summary>
    public Guid Id { get; private init; } = Guid.CreateVersion7();

    /// <summary>What happened.</summary>
    public MovementKind What => Enum.TryParse<MovementKind>(Text(Kind), out var kind) && Enum.IsDefined(kind) ? kind : MovementKind.Sold;

    /// <summary>The fields of a printing.</summary>
    public PrintingEntry Printing { get; } = new(view);

    /// <summary>Fields that the line has now.</summary>
    public IEnumerable<string> Fields => [Day, Kind, Copies, .. HasMoney ? (string[])[Channel, Amount] : [], Note, .. What == MovementKind.Printed ? Printing.Fields : []];

    /// <summary>All fields in which something was typed.</summary>
    public IReadOnlyCollection<string> Typed => typed.Keys;

    /// <summary>True where nothing of this line itself was typed yet.</summary>
    public bool IsUntouched => typed.Keys.All(name => name is Day or Kind or Channel);

    /// <summary>True where the line is a sale or a return, which have a channel and money.</summary>
    public bool HasMoney => What is MovementKind.Sold or MovementKind.Returned;

    /// <summary>Names a field in the browser's store.</summary>
    public string DraftKey(string field) => view.Tally is { } tally ? $"copies/{view.Edition.Id}/tally-{tally.Tally.Id}/{field}" : $"copies/{view.Edition.Id}/{field}";

    /// <summary>What stands in a field. Copies are counted today, unless a day is typed for this very count: at the day of the line before, all that was sold since would be missing.</summary>
    public string Text(string field) =>
        field == Day && dayOfLineBefore && What == MovementKind.Counted ? Usual(Day) : typed.GetValueOrDefault(field) ?? Usual(field);

    /// <summary>What is wrong with a field; null where nothing is.</summary>
    public string? Problem(string field) => problems.GetValueOrDefault(field);

    /// <summary>What stands in a field where nothing was typed.</summary>
    public string Usual(string field) => field switch
    {
        Day => PressFormat.Written(view.Today),
        Kind => (view.Position.Printed == 0 || view.Tally is not null ? MovementKind.Printed : MovementKind.Sold).ToString(),
        Copies when What == MovementKind.Printed && view.Tallied is { Good: > 0 } tallied => format.Count(tallied.Good),
        Copies => What == MovementKind.Printed && view.Plan is { } plan ? format.Count(plan.Estimate.Quantity) : "",
        Channel => view.Offered.Count > 0 ? view.Offered[0].Id : "",
        Amount => UsualAmount(),
        Note => "",
        _ => Printing.Usual(field, format),
    };

    /// <summary>Takes what was typed into a field.</summary>
    public void Type(string field, string text)
    {
        problems.Remove(field);
        dayOfLineBefore &= field != Day;
        typed[field] = text;
        if (text == Usual(field))
        {
            typed.Remove(field);
        }
    }

    /// <summary>The line, or null where a field is wrong; the field then says what would be right.</summary>
    public NewMovement? Read()
    {
        problems.Clear();
        var kind = What;
        var day = Must(Day, Shared.Wording.Typed.Day(Text(Day), format.Culture), Say($"Write the day on which it happened, such as {PressFormat.Written(view.Today)}."));
        var copies = Must<int>(Copies, Shared.Wording.Typed.Count(Text(Copies), format.Culture), Say($"Write how many copies, such as 3."));
        var amount = HasMoney ? Must(Amount, Shared.Wording.Typed.Number(Text(Amount), format.Culture), AmountRule) : 0m;
        var printing = kind == MovementKind.Printed ? Printing.Read(copies, this, format) : null;
        var channel = HasMoney && Text(Channel).Length > 0 ? Text(Channel) : null;
        return problems.Count > 0
            ? null
            : new NewMovement(
                Id, view.Edition.Id, day, kind, copies, printing?.LandedCost(format.Currency.MinorDigits) ?? amount, channel, Text(Note).Trim(), printing,
                printing is not null && view.Tally is { } tally ? new TallySeen(tally.Tally.Id, tally.Tally.Lines) : null);
    }

    /// <summary>What a printing would cost as far as its fields can be read; null for other lines, or where they cannot be read.</summary>
    public PrintingActual? Seen()
    {
        if (What != MovementKind.Printed || Shared.Wording.Typed.Count(Text(Copies), format.Culture) is not (> 0 and var copies))
        {
            return null;
        }

        var kept = problems.ToList();
        problems.Clear();
        var seen = Printing.Read(copies, this, format);
        var readable = problems.Count == 0;
        problems.Clear();
        kept.ForEach(problem => problems.Add(problem.Key, problem.Value));
        return readable ? seen : null;
    }

    /// <summary>Says what the ledger refused beside the fields that it is about.</summary>
    public void Refuse(IReadOnlyList<Problem> refused)
    {
        foreach (var problem in refused)
        {
            var field = problem.Path.Split('.')[^1];
            problems[Fields.Contains(field) ? field : Note] = SayWhole(problem.Rule);
        }
    }

    /// <summary>The same line on the ledger as it is stored now.</summary>
    public LedgerEntry On(CopiesView now) => With(now, Id, typed.Keys, dayOfLineBefore);

    /// <summary>The next line, after this one was written: day, kind and channel stay as they were, for the next copy of the same evening.</summary>
    public LedgerEntry After(CopiesView now) => With(now, Guid.CreateVersion7(), What == MovementKind.Printed ? [] : typed.Keys.Where(field => field is Day or Kind or Channel), true);

    private LedgerEntry With(CopiesView now, Guid id, IEnumerable<string> kept, bool ofLineBefore)
    {
        var next = new LedgerEntry(now, format) { Id = id, dayOfLineBefore = ofLineBefore };
        foreach (var field in kept)
        {
            next.typed[field] = typed[field];
        }

        return next;
    }

    internal string AmountRule => Say($"Write an amount such as {format.Money(27m)}, 0 or more.");

    internal decimal Must(string field, decimal? value, string rule) => Must<decimal>(field, value is >= 0m && JobRules.Amount.Holds(value.Value) ? value : null, rule);

    internal T Must<T>(string field, T? value, string rule)
        where T : struct
    {
        if (value is null)
        {
            problems[field] = rule;
        }

        return value ?? default;
    }

    // So many copies at the printing's own price; the maker writes over it what really came in.
    private string UsualAmount() =>
        HasMoney && Shared.Wording.Typed.Count(Text(Copies), format.Culture) is { } copies ? format.Money(copies * view.Edition.Price) : "";
}
