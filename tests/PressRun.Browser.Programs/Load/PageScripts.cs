using System.Globalization;
using System.Text.RegularExpressions;

namespace PressRun.Browser.Programs.Load;

/// <summary>What the scripts of a page would answer its server, as far as the server goes on by it: nothing typed before, no menu open, and a number for everything it wants to hold.</summary>
internal sealed partial class PageScripts
{
    // Kinds of result as the framework numbers them.
    private const int Held = 1;

    private int held;

    /// <summary>The object of the server that takes what is done on the page.</summary>
    public long Renderer { get; private set; }

    /// <summary>The object of the server that is told when the typing pauses.</summary>
    public long Drafts { get; private set; }

    /// <summary>True as soon as the page would take what is typed.</summary>
    public bool Live { get; private set; }

    /// <summary>Answers a call, as JSON.</summary>
    /// <param name="function">What is called.</param>
    /// <param name="arguments">Its arguments as JSON.</param>
    /// <param name="kind">The kind of result.</param>
    public string Answer(string function, string arguments, int kind)
    {
        switch (function)
        {
            case "Blazor._internal.attachWebRendererInterop":
                Renderer = ObjectIn(arguments);
                break;
            case "listen":
                Drafts = ObjectIn(arguments);
                break;
            case "markInteractive":
                Live = true;
                break;
        }

        return kind == Held
            ? string.Create(CultureInfo.InvariantCulture, $$"""{"__jsObjectId":{{++held}}}""")
            : function switch
            {
                "window.hasOwnProperty" => "true",
                "mudpopoverHelper.countProviders" => "0",
                "recall" => "{}",
                "origin" => "\"earlier\"",
                _ => "null",
            };
    }

    private static long ObjectIn(string arguments) => long.Parse(DotNetObject().Match(arguments).Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("""{"__dotNetObject":(\d+)}""")]
    private static partial Regex DotNetObject();
}
