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

    private sealed class Said : IAccessNews
    {
        public event Action<Guid>? SessionEnded;

        public event Action<Guid> RightsChanged
        {
            add { }
            remove { }
        }

        public event Action Missed
        {
            add { }
            remove { }
        }

        public void End(Guid session) => SessionEnded?.Invoke(session);
    }
}
