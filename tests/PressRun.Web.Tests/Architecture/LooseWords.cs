using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using static PressRun.Web.Shared.Wording.Texts;

namespace PressRun.Web.Tests.Architecture;

/// <summary>A page that writes and keeps words as no page of the app may.</summary>
internal sealed class LooseWords : ComponentBase
{
    public static readonly string Kept = Say($"kept too long");

    public static string Made(bool really) => really ? "A sentence that is only made" : "";

    public static string Told(int some, int all) => Say("a state", $"told {some} of {all}");

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.AddContent(0, "Loose content");
        builder.AddMarkupContent(1, "<p>Loose markup</p>");
        builder.OpenElement(2, "a");
        builder.AddAttribute(3, "class", "button first");
        builder.AddAttribute(4, "aria-label", "Loose label");
        builder.CloseElement();
    }
}
