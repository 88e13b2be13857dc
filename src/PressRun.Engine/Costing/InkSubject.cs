using PressRun.Engine.Editions;

namespace PressRun.Engine.Costing;

/// <summary>What the inks are called in the subjects of lines and steps.</summary>
public static class InkSubject
{
    private const string Black = "black";
    private const string Colour = "colour";

    /// <summary>The subject of what is printed in an ink.</summary>
    /// <param name="ink">Black or colour.</param>
    public static string Of(Ink ink) => ink == Ink.Colour ? Colour : Black;

    /// <summary>The ink that a subject is about.</summary>
    /// <param name="subject">From <see cref="Of"/>.</param>
    public static Ink In(string subject) => subject == Colour ? Ink.Colour : Ink.Black;
}
