using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

/// <summary>A page about one printing, which its address names by the title's slug and the number of the printing.</summary>
public abstract class PrintingPage : ComponentBase, IDisposable
{
    private readonly LastAsked asked = new();

    /// <summary>The title in the address.</summary>
    [Parameter]
    public string Slug { get; set; } = "";

    /// <summary>The printing in the address; the first is 1.</summary>
    [Parameter]
    public int Printing { get; set; }

    /// <summary>What the page showed before it came to life.</summary>
    [Inject]
    private Handover Handover { get; set; } = default!;

    /// <summary>Where the page goes on.</summary>
    [Inject]
    protected NavigationManager Navigation { get; set; } = default!;

    /// <summary>The press that is open; null where there is none.</summary>
    [CascadingParameter]
    protected PressView? Press { get; set; }

    /// <summary>How the press writes figures. Only where a press is open.</summary>
    protected PressFormat Format => Press!.Format;

    /// <summary>Address of the printing's own page.</summary>
    protected string EditionAddress => $"titles/{Slug}/{Printing.ToString(CultureInfo.InvariantCulture)}";

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Loads what the page shows, or takes over what it showed before it came to life. Where the address moved on meanwhile, nothing is
    /// answered: a slow answer about one printing is never shown under the name of another.</summary>
    /// <param name="what">The same for the page as sent and for its circuit.</param>
    /// <param name="load">Loads it.</param>
    /// <exception cref="OperationCanceledException">Something else was asked for since.</exception>
    protected Task<T?> LoadAsync<T>(string what, Func<Task<T?>> load)
        where T : class => asked.AnswerAsync(_ => Handover.LoadAsync(what, load));

    /// <summary>Lets go what the page holds.</summary>
    /// <param name="disposing">True.</param>
    protected virtual void Dispose(bool disposing) => asked.Dispose();
}
