using PressRun.Data.Tallies;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Bench;

namespace PressRun.Data.Tests;

/// <summary>
/// Two to four people count in one tally on phones that behave as js/queue.js does: an entry waits until it is answered, and goes out with all that wait.
/// Between them and the server messages are lost, answers are lost, and messages arrive long after the phone has given them up and sent them again.
/// </summary>
public sealed class TallyInterleavingTests(PostgresFixture postgres)
{
    private const int Tables = 4;
    private const int MostTurns = 14;

    private static readonly IReadOnlyList<TallyStep> Steps =
        [new("collate", WorkKind.Collate, 0m, null), new("stitch", WorkKind.Staple, 0.03m, 25.5m), new("fold", WorkKind.Fold, 0m, null)];

    [Fact]
    public async Task Whatever_becomes_of_the_messages_of_several_counters_nothing_is_lost_and_nothing_counted_twice()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var rounds = LongRuns.Count(usual: 80, atLength: 10_000);
        await Task.WhenAll(Enumerable.Range(0, Tables).Select(async table =>
        {
            var small = await SmallPress.CreateAsync(stores, $"Table {table}");
            for (var round = table; round < rounds; round += Tables)
            {
                await CountAsync(stores, small, round);
            }
        }));
    }

    // The round's number is the seed: what each phone and the air between do is the same again, only how they meet at the server differs.
    private static async Task CountAsync(Stores stores, SmallPress small, int round)
    {
        var edition = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        var tally = SmallPress.Saved(await stores.Tallies.BeginAsync(small.Id, new NewTally(Guid.NewGuid(), edition.Id, "Millrace", 110, 100, Steps)));
        var phones = Enumerable.Range(0, 2 + (round % 3)).Select(person => new Phone($"person {person}", new Random((round * 10) + person), SendAsync)).ToList();

        await Task.WhenAll(phones.Select(phone => phone.CountAsync(MostTurns)));

        var whole = (await stores.Tallies.FindAsync(small.Id, tally.Id))!;
        var (meant, stands) = (Tally.Of(tally.Copies, tally.Wanted, tally.Steps, phones.SelectMany(phone => phone.Meant)), whole.Sums());
        foreach (var (wanted, step) in meant.Steps.Zip(stands.Steps))
        {
            Assert.True((wanted.Done, wanted.Spoiled, wanted.Left, wanted.Seconds) == (step.Done, step.Spoiled, step.Left, step.Seconds), $"Round {round}, {step.Step.Name}: {step} in place of {wanted}");
            Assert.Equal(wanted.People.OrderBy(person => person.By), step.People.OrderBy(person => person.By));
        }

        Assert.Equal(phones.Sum(phone => phone.Lines), whole.Entries.Count);
        Assert.Equal(whole.Entries.Count, whole.Tally.Lines);

        async Task SendAsync(IReadOnlyList<NewTallyEntry> message) =>
            Assert.All((await stores.Tallies.WriteAsync(small.Id, tally.Id, message))!, outcome => Assert.Null(outcome.Problem));
    }

    private sealed class Phone(string name, Random chance, Func<IReadOnlyList<NewTallyEntry>, Task> send)
    {
        private readonly List<Kept> entries = [];
        private readonly List<IReadOnlyList<NewTallyEntry>> late = [];

        /// <summary>What its person wanted to have counted.</summary>
        public IEnumerable<TallyEntry> Meant => entries.Where(kept => !kept.Undone).Select(kept => kept.Entry.Entry);

        /// <summary>Lines that must be written for it: one for each entry, two where it was taken back.</summary>
        public int Lines => entries.Sum(kept => kept.Undone ? 2 : 1);

        private IReadOnlyList<Kept> Waiting => [.. entries.Where(kept => kept.Waits)];

        public async Task CountAsync(int most)
        {
            for (var turn = 2 + chance.Next(most); turn > 0; turn--)
            {
                await (chance.Next(10) switch
                {
                    < 5 => Tap(),
                    5 => TakeBack(),
                    < 9 => TryAsync(),
                    _ => ArriveLateAsync(),
                });
            }

            // The line is back: what waits is sent until it is answered, and what was given up may still arrive after it.
            await TellAsync(Waiting);
            while (late.Count > 0)
            {
                await ArriveLateAsync();
            }
        }

        private Task Tap()
        {
            var (kind, number) = ((TallyKind)chance.Next(3), 1 + chance.Next(10));
            var (copies, seconds) = kind == TallyKind.Worked ? (0, 60 * number) : (number, 0);
            entries.Add(new Kept(new NewTallyEntry(Guid.NewGuid(), new TallyEntry(chance.Next(Steps.Count), kind, copies, seconds, name), TimeSpan.FromSeconds(chance.Next(100)), false)));
            return Task.CompletedTask;
        }

        // What never left the phone just goes.
        private Task TakeBack()
        {
            if (entries.Count > 0 && entries[chance.Next(entries.Count)] is { Undone: false } kept)
            {
                if (kept.Tried)
                {
                    (kept.Undone, kept.Waits) = (true, true);
                }
                else
                {
                    entries.Remove(kept);
                }
            }

            return Task.CompletedTask;
        }

        private async Task TryAsync()
        {
            var waiting = Waiting;
            waiting.ToList().ForEach(kept => kept.Tried = true);
            switch (chance.Next(4))
            {
                case 0:
                    // Lost on the way.
                    break;
                case 1:
                    // Given up, and under way for longer than the phone waits.
                    late.Add(MessageOf(waiting));
                    break;
                case 2:
                    // Written, and the answer lost.
                    await SendAsync(MessageOf(waiting));
                    break;
                default:
                    await TellAsync(waiting);
                    break;
            }
        }

        private async Task TellAsync(IReadOnlyList<Kept> waiting)
        {
            await SendAsync(MessageOf(waiting));
            foreach (var kept in waiting)
            {
                (kept.Tried, kept.Waits) = (true, false);
            }
        }

        private async Task ArriveLateAsync()
        {
            if (late.Count > 0)
            {
                var message = late[chance.Next(late.Count)];
                late.Remove(message);
                await SendAsync(message);
            }
        }

        private Task SendAsync(IReadOnlyList<NewTallyEntry> message) => message.Count == 0 ? Task.CompletedTask : send(message);

        private static IReadOnlyList<NewTallyEntry> MessageOf(IReadOnlyList<Kept> waiting) => [.. waiting.Select(kept => kept.Entry with { TakenBack = kept.Undone })];
    }

    private sealed class Kept(NewTallyEntry entry)
    {
        public NewTallyEntry Entry { get; } = entry;

        public bool Waits { get; set; } = true;

        public bool Tried { get; set; }

        public bool Undone { get; set; }
    }
}
