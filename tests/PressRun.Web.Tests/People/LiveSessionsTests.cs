using PressRun.Data.Access;
using PressRun.Data.Running;
using PressRun.Web.People;

namespace PressRun.Web.Tests.People;

public sealed class LiveSessionsTests
{
    [Fact]
    public async Task Lines_of_a_sign_in_that_ended_are_cut_though_one_of_its_pages_is_too_busy_to_be_told_and_its_others_are_told_at_once()
    {
        var (news, person) = (new Said(), new Visitor.Person(Guid.NewGuid(), Guid.NewGuid()));
        using var live = new LiveSessions(news, null!, TimeProvider.System);
        var (busy, told, cut) = (new TaskCompletionSource(), new TaskCompletionSource(), new TaskCompletionSource());
        using var first = live.Watch(person, _ => busy.Task);
        using var second = live.Watch(person, _ =>
        {
            told.TrySetResult();
            return busy.Task;
        });
        using var third = live.Watch(person, _ => busy.Task);
        using var line = live.Connect(person, () => cut.TrySetResult());

        news.End(person.SessionId);

        await Task.WhenAll(told.Task, cut.Task).WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        busy.SetResult();
    }

    [Fact]
    public async Task Where_news_may_have_been_missed_every_page_is_told_to_look_what_it_may()
    {
        var news = new Said();
        using var live = new LiveSessions(news, null!, TimeProvider.System);
        var told = Enumerable.Range(0, 2).Select(_ => new TaskCompletionSource<AccessChange>()).ToArray();
        var pages = told.Select(page => live.Watch(new Visitor.Person(Guid.NewGuid(), Guid.NewGuid()), change =>
        {
            page.TrySetResult(change);
            return Task.CompletedTask;
        })).ToArray();

        news.Miss();

        Assert.All(await Task.WhenAll(told.Select(page => page.Task)).WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken), change => Assert.Equal(AccessChange.Missed, change));
        Assert.All(pages, page => page.Dispose());
    }

    private sealed class Said : IAccessNews
    {
        public event Action<Guid>? SessionEnded;

        public event Action<Guid> RightsChanged
        {
            add { }
            remove { }
        }

        public event Action? Missed;

        public void Miss() => Missed?.Invoke();

        public void End(Guid session) => SessionEnded?.Invoke(session);
    }
}
