namespace PressRun.Web.Pdf;

/// <summary>How a row of a table stands.</summary>
public enum RowKind
{
    /// <summary>One of many.</summary>
    Plain,

    /// <summary>Says what the columns hold.</summary>
    Head,

    /// <summary>What the rows above add up to.</summary>
    Sum,
}
