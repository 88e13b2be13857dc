using Bunit;
using Bunit.TestDoubles;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using MudBlazor.Services;
using PressRun.Data.Running;
using PressRun.Web.Layout;
using PressRun.Web.People;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Layout;

public sealed class MainLayoutTests
{
    [Theory]
    [InlineData(true, "The database does not answer", 0)]
    [InlineData(false, "This page could not be shown", 1)]
    public async Task A_page_that_is_open_while_the_database_goes_stays_calm_and_goes_on_when_it_is_back(bool isAway, string heading, int told)
    {
        await using var page = new BunitContext();
        using var heard = new HeardLines();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        page.Services.AddMudServices();
        page.Services.AddLogging(logging => logging.AddProvider(heard));
        page.Services.AddSingleton(TimeProvider.System);
        page.Services.AddSingleton<IErrorBoundaryLogger, QuietBoundary>();
        page.ComponentFactories.AddStub<Masthead>();
        page.ComponentFactories.AddStub<SessionWatch>();
        page.ComponentFactories.AddStub<InteractiveMark>();
        // As a store's exception arrives, with what the framework wraps around it.
        var book = new Book { Fault = isAway ? new InvalidOperationException("A page asked.", new DatabaseAwayException()) : new InvalidOperationException("A defect.") };

        var layout = page.Render<MainLayout>(parameters => parameters.AddCascadingValue(new Who(true, null)).Add(shown => shown.Body, book.Render));
        Assert.Equal(heading, layout.Find("[role=alert] h1").TextContent);
        Assert.Equal(told, heard.Lines.Count(line => line == "A page could not be shown"));

        book.Fault = null;
        await layout.Find("[role=alert] button").ClickAsync();
        if (isAway)
        {
            // Fetched anew, it brings what was typed out of the browser's store.
            Assert.True(page.Services.GetRequiredService<BunitNavigationManager>().History.Single().Options.ForceLoad);
        }
        else
        {
            Assert.Equal("The book", layout.Find("main").TextContent.Trim());
        }
    }

    private sealed class Book
    {
        public Exception? Fault { get; set; }

        public void Render(RenderTreeBuilder builder)
        {
            builder.OpenComponent<Reading>(0);
            builder.AddAttribute(1, nameof(Reading.Ask), (Func<string>)(() => Fault is null ? "The book" : throw Fault));
            builder.CloseComponent();
        }
    }

    private sealed class Reading : ComponentBase
    {
        [Parameter]
        public Func<string> Ask { get; set; } = () => "";

        private string text = "";

        protected override void OnInitialized() => text = Ask();

        protected override void BuildRenderTree(RenderTreeBuilder builder) => builder.AddContent(0, text);
    }
}
