using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;

namespace PressRun.Web.Layout;

/// <summary>A word of the masthead, marked as where one is.</summary>
public sealed class PlaceLink : NavLink
{
    /// <summary>True for the place that the app opens with: its word is marked at the root too.</summary>
    [Parameter]
    public bool AtRoot { get; set; }

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    /// <inheritdoc/>
    protected override bool ShouldMatch(string uriAbsolute) =>
        base.ShouldMatch(uriAbsolute) || (AtRoot && Navigation.ToBaseRelativePath(uriAbsolute).Split('?', '#')[0].Length == 0);
}
