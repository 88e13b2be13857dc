using Microsoft.AspNetCore.Components;

namespace PressRun.Web.Start;

/// <summary>What is said of a whole press.</summary>
internal static class WholePressWords
{
    /// <summary>What goes with a press that is taken out.</summary>
    public static RenderFragment Goes(string name) =>
        Put($"<bdi>{name}</bdi> goes for good, with its titles, ledger and quotes; links to its quotes open nothing any more, and nobody who belongs to it sees it again. Save it first: this cannot be undone.");
}
