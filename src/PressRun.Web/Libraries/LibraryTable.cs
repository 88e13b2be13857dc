using PressRun.Data;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries.Grid;
using PressRun.Web.Shared;

namespace PressRun.Web.Libraries;

/// <summary>One of a press's libraries as an edited table: reads what is typed, stores each thing as soon as it is right, and says what is wrong with
/// the others.</summary>
/// <param name="store">Where the things are kept.</param>
/// <param name="shape">How rows become things.</param>
/// <param name="nameOf">What a thing is called.</param>
/// <param name="press">Whose library.</param>
/// <param name="manners">The viewer's decimal mark and units.</param>
/// <param name="past">Which of the things have been followed by others, and need not be shown; null in a library that has no such things.</param>
public sealed class LibraryTable<T>(
    LibraryStore<T> store, TableShape<LibraryItem<T>> shape, Func<T, string> nameOf, PressId press, CellManners manners, Func<IReadOnlyList<T>, IEnumerable<T>>? past = null)
    where T : class
{
    private readonly Dictionary<(string Id, string Table), LibraryItem<T>> stored = [];
    private readonly int id = ColumnOf(shape, "id");
    private readonly OneAtATime looks = new();
    private readonly int[] kept = [.. Enumerable.Range(0, shape.Columns.Count).Where(column => shape.Columns[column].Role == ColumnRole.Kept)];

    // What somebody else changed or took out in between: the texts of the row by which nothing is to be saved, as it had been and as it was refused, and what was said of it.
    private readonly Dictionary<(string Id, string Table), (IReadOnlyList<string[]> Texts, string Note)> told = [];

    /// <summary>The text and its edits.</summary>
    public GridDocument Document { get; } = new(shape.Columns.Count);

    /// <summary>What was found out about the text.</summary>
    public GridState State { get; private set; } = GridState.Clean;

    /// <summary>What could not be taken out because it is in use.</summary>
    public IReadOnlyList<HeldThing<T>> Held { get; private set; } = [];

    /// <summary>The columns.</summary>
    public IReadOnlyList<Column> Columns => shape.Columns;

    /// <summary>How the table is read.</summary>
    public TableShape<LibraryItem<T>> Shape => shape;

    /// <summary>What is stored and shown, in no order.</summary>
    public IReadOnlyCollection<LibraryItem<T>> Stored => stored.Values;

    /// <summary>How many stored things are not shown, because others followed them.</summary>
    public int PastHidden { get; private set; }

    /// <summary>The thing that a row belongs to as it is stored; null for one that is not.</summary>
    public LibraryItem<T>? ThingOf(GridRow row) => byRow.GetValueOrDefault(row.Key);

    private Dictionary<string, LibraryItem<T>> byRow = [];

    /// <summary>Fetches the library.</summary>
    /// <param name="archived">Archived things too.</param>
    /// <param name="withPast">Those too that others followed.</param>
    public async Task LoadAsync(bool archived, bool withPast = false)
    {
        stored.Clear();
        told.Clear();
        Held = [];
        State = GridState.Clean;
        var things = await store.ListAsync(press, archived);
        if (past is not null && !withPast)
        {
            // What is archived is asked for by its own name, and nothing in force follows it.
            var followed = past([.. things.Where(thing => !thing.Archived).Select(thing => thing.Item)]).Select(store.IdentityOf).ToHashSet();
            things = [.. things.Where(thing => !followed.Contains(store.IdentityOf(thing.Item)))];
            PastHidden = followed.Count;
        }
        else
        {
            PastHidden = 0;
        }

        foreach (var thing in things)
        {
            stored[store.IdentityOf(thing.Item)] = thing;
        }

        Document.Load(things.SelectMany(RowsOf));
        Remember();
    }

    /// <summary>Puts rows of starting data below what stands there, as one edit, and stores them.</summary>
    /// <param name="keys">Keys of the columns that are filled.</param>
    /// <param name="rows">Cells by those columns.</param>
    /// <param name="what">What they are, for undo.</param>
    public Task StartWithAsync(IReadOnlyList<string> keys, IReadOnlyList<IReadOnlyList<string>> rows, string what)
    {
        Document.Put(Document.Rows[^1].Key, [.. keys.Select(key => ColumnOf(shape, key))], rows, what);
        return ChangedAsync();
    }

    /// <summary>Looks at the text after an edit and stores what is right. One look after the other: a row that is being stored is no new row to the next edit.</summary>
    public Task ChangedAsync() => looks.DoAsync(async () =>
    {
        await LookAsync();
        return true;
    });

    private async Task LookAsync()
    {
        Held = [];
        var rows = Filled();
        var look = new LibraryLook<T>(shape, rows, Read(rows), manners);
        await SaveAsync(look);
        await DeleteMissingAsync(look, [.. rows.Where(row => look.Unsaved.Contains(row.Key)).Select(row => row.Cells[id])]);
        Document.Settle(look.Texts, kept, rows);
        State = new GridState(look.Problems, look.Notes, look.Unsaved);
        Remember();
    }

    /// <summary>Archives the things of some rows, or brings them back.</summary>
    public async Task ArchiveAsync(IEnumerable<LibraryItem<T>> things, bool archived, bool showArchived, bool showPast)
    {
        var asked = await store.SaveAllAsync(press, [.. things.Select(thing => thing with { Archived = archived })]);
        // What somebody else changed in between is put away as they left it: that it is put away says nothing of its figures.
        var changed = asked.OfType<SaveResult<LibraryItem<T>>.Conflict>().Select(conflict => conflict.Theirs with { Archived = archived }).ToList();
        if (changed.Count > 0)
        {
            await store.SaveAllAsync(press, changed);
        }

        await LoadAsync(showArchived, showPast);
    }

    private static int ColumnOf(TableShape<LibraryItem<T>> shape, string key) => shape.Columns.ToList().FindIndex(column => column.Key == key);

    private List<GridRow> Filled() => shape.Gathered(Document.Rows.Where(row => !row.IsBlank), row => row.Cells) is var rows && shape.Naming is [] ? WithIdsOnce(rows) : rows;

    // Of two rows with one id the lower is another thing: nobody sees the id, so nobody could mend it.
    private List<GridRow> WithIdsOnce(List<GridRow> rows)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        return rows.ConvertAll(row => row.Cells[id].Length == 0 || ids.Add(row.Cells[id]) ? row : row.With(id, ""));
    }

    private TableRead<LibraryItem<T>> Read(List<GridRow> rows) => shape.Read([.. rows.Select(row => row.Cells)], manners);

    private void Remember()
    {
        var rows = Filled();
        byRow = Read(rows).Things
            .SelectMany(thing => Enumerable.Range(thing.Row, thing.RowCount).Select(row => (rows[row].Key, Thing: stored.GetValueOrDefault(store.IdentityOf(thing.Thing.Item)))))
            .Where(pair => pair.Thing is not null)
            .ToDictionary(pair => pair.Key, pair => pair.Thing!);
    }

    private IEnumerable<GridRow> RowsOf(LibraryItem<T> thing)
    {
        var (key, table) = store.IdentityOf(thing.Item);
        return shape.Texts(thing, manners).Select((texts, step) => new GridRow($"{key}|{table}|{step}", texts));
    }

    private async Task SaveAsync(LibraryLook<T> look)
    {
        var named = look.Things.Select(thing => (Thing: thing, By: shape.NamedBy(thing.Thing))).Where(pair => pair.By is not null).ToLookup(pair => pair.By!.Value.Key, pair => pair.Thing);
        var toSave = new List<(ReadThing<LibraryItem<T>> Read, LibraryItem<T> Item)>();
        foreach (var thing in look.Things)
        {
            var identity = store.IdentityOf(thing.Thing.Item);
            var old = stored.GetValueOrDefault(identity);
            if (old is not null && Same(old, thing.Thing))
            {
                look.Settle(thing, old);
                look.Present.Add(identity);
            }
            else if (told.TryGetValue(identity, out var before) && before.Texts.Any(texts => texts.SequenceEqual(Flat(thing.Thing))))
            {
                // Only who looks at this row again decides over what somebody else did; an edit of another row does not. Whoever went back and types the same again has looked.
                told[identity] = ([Flat(thing.Thing)], before.Note);
                look.Present.Add(identity);
                look.Wait(thing, before.Note);
            }
            else if (shape.NamedBy(thing.Thing) is var (name, column) && Namesake(thing, [.. named[name]]) is { } other)
            {
                look.Present.Add(identity);
                look.Refuse(thing, column, TableReader.StandsTwice(other.Row < thing.Row, shape.Naming.Count > 0));
            }
            else
            {
                toSave.Add((thing, thing.Thing with { Version = old?.Version ?? 0 }));
            }
        }

        var results = toSave.Count == 0 ? [] : await store.SaveAllAsync(press, [.. toSave.Select(save => save.Item)]);
        foreach (var ((read, item), result) in toSave.Zip(results))
        {
            Take(look, read, item, result);
        }
    }

    // The other thing for whose name a new or changed one is not stored: any further up, or one further down that stands there stored. What was stored with one name before stays.
    private ReadThing<LibraryItem<T>>? Namesake(ReadThing<LibraryItem<T>> thing, IReadOnlyList<ReadThing<LibraryItem<T>>> named) =>
        named.FirstOrDefault(other => other.Row < thing.Row)
        ?? named.FirstOrDefault(other => other.Row > thing.Row && stored.TryGetValue(store.IdentityOf(other.Thing.Item), out var old) && Same(old, other.Thing));

    private void Take(LibraryLook<T> look, ReadThing<LibraryItem<T>> thing, LibraryItem<T> item, SaveResult<LibraryItem<T>> result)
    {
        var identity = store.IdentityOf(item.Item);
        look.Present.Add(result is SaveResult<LibraryItem<T>>.Saved now ? store.IdentityOf(now.Now.Item) : identity);
        switch (result)
        {
            case SaveResult<LibraryItem<T>>.Saved saved:
                told.Remove(identity);
                stored[store.IdentityOf(saved.Now.Item)] = saved.Now;
                look.Settle(thing, saved.Now);
                break;
            case SaveResult<LibraryItem<T>>.Refused refused:
                look.Refuse(thing, refused.Problems);
                break;
            case SaveResult<LibraryItem<T>>.Conflict conflict:
                look.Wait(thing, Tell(item, identity, ChangedTo(conflict.Theirs)));
                stored[identity] = conflict.Theirs;
                break;
            default:
                look.Wait(thing, Tell(item, identity, Say($"Somebody else took this out in between. Change it once more to add it again.")));
                stored.Remove(identity);
                break;
        }
    }

    // By neither of these texts is anything to be saved: the one that was refused, and the one that undo brings back.
    private string Tell(LibraryItem<T> refused, (string Id, string Table) identity, string note)
    {
        told[identity] = ([Flat(refused), .. stored.GetValueOrDefault(identity) is { } old ? new[] { Flat(old) } : []], note);
        return note;
    }

    private async Task DeleteMissingAsync(LibraryLook<T> look, HashSet<string> wrong)
    {
        var held = new List<HeldThing<T>>();
        foreach (var (identity, thing) in stored.Where(pair => !look.Present.Contains(pair.Key) && !wrong.Contains(pair.Key.Id)).ToList())
        {
            switch (await store.DeleteAsync(press, thing))
            {
                case DeleteResult.InUse use:
                    held.Add(new HeldThing<T>(thing, nameOf(thing.Item), use.Where));
                    Document.PutBack(RowsOf(thing));
                    break;
                case DeleteResult.Changed when (await store.ListAsync(press, archived: true)).FirstOrDefault(one => store.IdentityOf(one.Item) == identity) is { } theirs:
                    // Undo would bring back the row as it had been.
                    told[identity] = ([Flat(thing)], ChangedTo(theirs));
                    stored[identity] = theirs;
                    var back = RowsOf(theirs).ToList();
                    Document.PutBack(back);
                    look.Notes[back[0].Key] = Say($"Somebody saved this in between, so it stays. Look at it again, and then take it out.");
                    break;
                default:
                    stored.Remove(identity);
                    told.Remove(identity);
                    break;
            }
        }

        Held = held;
    }

    private bool Same(LibraryItem<T> left, LibraryItem<T> right) => Flat(left).SequenceEqual(Flat(right), StringComparer.Ordinal);

    private string[] Flat(LibraryItem<T> thing) => [.. shape.Texts(thing, manners).SelectMany(line => line)];

    private string ChangedTo(LibraryItem<T> theirs) => Say($"Somebody else changed this in between, to {Told(theirs)}. Change it once more to save yours over it.");

    private string Told(LibraryItem<T> thing) =>
        string.Join(", ", shape.Texts(thing, manners).First().Zip(shape.Columns).Where(cell => cell.First.Length > 0 && cell.Second.Role == ColumnRole.Shown).Select(cell => CellWords.Shown(cell.Second.Kind, cell.First)));
}
