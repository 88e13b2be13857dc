using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

/// <summary>A page about one printing, which its address names by the title's slug and the number of the printing.</summary>
public abstract class PrintingPage : ComponentBase
{
    /// <summary>The title in the address.</summary>
    [Parameter]
    public string Slug { get; set; } = "";

    /// <summary>The printing in the address; the first is 1.</summary>
    [Parameter]
    public int Printing { get; set; }

    /// <summary>What the page showed before it came to life.</summary>
    [Inject]
    protected Handover Handover { get; set; } = default!;

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
}
