using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Web.Layout;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shared;

public sealed class FileFieldTests : IAsyncLifetime
{
    private const string TooLarge = "That is too large.";

    private readonly BunitContext page = new() { JSInterop = { Mode = JSRuntimeMode.Loose } };
    private string? taken;
    private int chosen;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync() => await page.DisposeAsync();

    [Fact]
    public async Task A_file_is_read_and_meanwhile_no_other_is_chosen()
    {
        var go = new TaskCompletionSource();
        var shown = Shown(async file =>
        {
            taken = System.Text.Encoding.UTF8.GetString((await file.BytesAsync()).Span);
            await go.Task;
        });
        Assert.Equal("Choose a file", shown.Find(".button").TextContent);

        var choosing = ChooseAsync(shown, new ChosenFile("all of it"));
        await shown.WaitForAssertionAsync(() => Assert.Equal("Reading it", shown.Find(".button").TextContent));
        Assert.True(shown.Find("input").HasAttribute("disabled"));
        go.SetResult();
        await choosing;

        Assert.Equal(("all of it", 1), (taken, chosen));
        Calm(shown);
        Assert.Empty(shown.FindAll("[role=alert]"));
    }

    [Fact]
    public async Task A_file_that_is_too_large_is_refused_unread_and_what_was_said_of_the_one_before_is_gone()
    {
        var shown = Shown(_ => throw new InvalidOperationException("It is not read."));

        await ChooseAsync(shown, new ChosenFile(new string('x', 101)));
        Assert.Equal(TooLarge, shown.Find("[role=alert]").TextContent);
        Assert.Equal(1, chosen);
        Calm(shown);
    }

    [Theory]
    [InlineData(typeof(TimeoutException))]
    [InlineData(typeof(InvalidOperationException))]
    [InlineData(typeof(IOException))]
    public async Task A_file_that_the_browser_does_not_send_to_its_end_is_to_be_chosen_again(Type how)
    {
        var shown = Shown(file => file.BytesAsync());

        await ChooseAsync(shown, new ChosenFile("gone") { Fault = (Exception)Activator.CreateInstance(how)! });
        Assert.Equal("The file could not be read to its end. Choose it again.", shown.Find("[role=alert]").TextContent);
        Calm(shown);

        await ChooseAsync(shown, new ChosenFile("here"));
        Assert.Empty(shown.FindAll("[role=alert]"));
    }

    // The event of the browser's own field gives what is thrown to the browser, where nobody reads it.
    [Fact]
    public async Task What_nobody_foresaw_comes_to_the_boundary_of_the_page()
    {
        page.Services.AddLogging();
        page.Services.AddSingleton(TimeProvider.System);
        page.Services.AddSingleton<IErrorBoundaryLogger, QuietBoundary>();
        var boundary = page.Render<ErrorBoundary>(parameters => parameters
            .Add(shown => shown.ErrorContent, trouble => trouble.Message)
            .Add(shown => shown.ChildContent, builder =>
            {
                builder.OpenComponent<FileField>(0);
                builder.AddMultipleAttributes(1, With(_ => throw new NotSupportedException("Nobody foresaw it.")));
                builder.CloseComponent();
            }));

        await ChooseAsync(boundary, new ChosenFile("any"));
        Assert.Equal("Nobody foresaw it.", boundary.Markup);
    }

    private static Task ChooseAsync(IRenderedComponent<IComponent> shown, IBrowserFile file)
    {
        var field = shown.FindComponent<InputFile>();
        return field.InvokeAsync(() => field.Instance.OnChange.InvokeAsync(new InputFileChangeEventArgs([file])));
    }

    private static void Calm(IRenderedComponent<FileField> shown)
    {
        Assert.Equal("Choose a file", shown.Find(".button").TextContent);
        Assert.False(shown.Find("input").HasAttribute("disabled"));
    }

    private IRenderedComponent<FileField> Shown(Func<BrowserFile, Task> take) => page.Render<FileField>(builder =>
    {
        builder.OpenComponent<FileField>(0);
        builder.AddMultipleAttributes(1, With(take));
        builder.CloseComponent();
    });

    private Dictionary<string, object> With(Func<BrowserFile, Task> take) => new()
    {
        [nameof(FileField.Label)] = "Choose a file",
        [nameof(FileField.Accept)] = ".txt",
        [nameof(FileField.Note)] = "Any.",
        [nameof(FileField.MostBytes)] = 100L,
        [nameof(FileField.TooLarge)] = TooLarge,
        [nameof(FileField.Chosen)] = EventCallback.Factory.Create(this, () => chosen++),
        [nameof(FileField.Taken)] = EventCallback.Factory.Create(this, take),
    };
}
