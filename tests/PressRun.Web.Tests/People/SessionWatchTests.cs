using System.Security.Claims;
using Bunit;
using Bunit.TestDoubles;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using PressRun.Data.Access;
using PressRun.Data.Running;
using PressRun.Web.People;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.People;

public sealed class SessionWatchTests
{
    [Fact]
    public async Task A_page_that_cannot_ask_what_became_of_its_press_says_so_once_stays_and_asks_again_until_it_has_an_answer()
    {
        await using var page = new BunitContext();
        using var heard = new HeardLines();
        var (news, clock, person) = (new Said(), new Waits(), new Visitor.Person(Guid.NewGuid(), Guid.NewGuid()));
        using var live = new LiveSessions(news, null!, TimeProvider.System);

        // Its database was never opened, which is a fault that nobody foresees.
        var unopened = Host.CreateEmptyApplicationBuilder(null);
        unopened.Configuration.AddInMemoryCollection([new("PressRun:DataFolder", "none")]);
        unopened.Services.AddPressRunData(unopened.Configuration);
        using var stores = unopened.Build();
        page.Services.AddSingleton(stores.Services.GetRequiredService<PressRun.Data.Presses.PressStore>());
        page.Services.AddLogging(logging => logging.AddProvider(heard));
        page.Services.AddSingleton<TimeProvider>(clock);
        page.Services.AddSingleton(live);
        page.Services.AddSingleton<AuthenticationStateProvider>(new SignedIn(person));
        page.Renderer.SetRendererInfo(new("Server", true));
        page.Render<SessionWatch>();

        news.Change(person.UserId);
        await clock.Waiting.Task.WaitAsync(TimeSpan.FromMinutes(1), Xunit.TestContext.Current.CancellationToken);
        Assert.Equal("A page could not look whether its press is still there for somebody, and tries again until it can", Assert.Single(heard.Lines));

        await clock.PassAsync();
        Assert.Single(heard.Lines);
        Assert.Empty(page.Services.GetRequiredService<BunitNavigationManager>().History);
    }

    private sealed class SignedIn(Visitor.Person person) : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() => Task.FromResult(new AuthenticationState(new ClaimsPrincipal(
            new ClaimsIdentity([new Claim(ClaimTypes.NameIdentifier, person.UserId.ToString()), new Claim("pressrun:session", person.SessionId.ToString())], "test"))));
    }

    private sealed class Said : IAccessNews
    {
        public event Action<Guid> SessionEnded
        {
            add { }
            remove { }
        }

        public event Action<Guid>? RightsChanged;

        public event Action Missed
        {
            add { }
            remove { }
        }

        public void Change(Guid user) => RightsChanged?.Invoke(user);
    }

    // Whoever waits by it goes on when told to.
    private sealed class Waits : TimeProvider
    {
        private TimerCallback? due;
        private object? state;

        public TaskCompletionSource Waiting { get; private set; } = new();

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            (due, this.state) = (callback, state);
            Waiting.TrySetResult();
            return new Nothing();
        }

        public Task PassAsync()
        {
            var (then, of) = (due!, state);
            Waiting = new();
            then(of);
            return Waiting.Task.WaitAsync(TimeSpan.FromMinutes(1), Xunit.TestContext.Current.CancellationToken);
        }

        private sealed class Nothing : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }
}
