using MudBlazor;

namespace PressRun.Web.Layout;

/// <summary>What MudBlazor is told of our look. Colours come from css/tokens.css by way of css/mud.css, so that they are named once.</summary>
public static class HouseTheme
{
    private static readonly string[] Sans = ["Public Sans", "Helvetica Neue", "Arial", "sans-serif"];

    /// <summary>The theme, the same for light and dark: the tokens know the difference.</summary>
    public static MudTheme Instance { get; } = new()
    {
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "0" },
        Shadows = new Shadow { Elevation = [.. Enumerable.Repeat("none", 26)] },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Sans, FontSize = "1rem", LineHeight = "1.5", LetterSpacing = "normal" },
            Button = new ButtonTypography { FontFamily = Sans, FontSize = "0.9375rem", TextTransform = "none", LetterSpacing = "normal" },
        },
    };
}
