namespace PressRun.Engine.Bench;

/// <summary>What is done to printed sheets until they are books.</summary>
public enum WorkKind
{
    /// <summary>Flat sheets are cut into pieces.</summary>
    CutApart,

    /// <summary>A line is pressed into heavy paper where it will be folded.</summary>
    Score,

    /// <summary>The pieces of a copy are laid together.</summary>
    Collate,

    /// <summary>The pieces of a copy are knocked even.</summary>
    Jog,

    /// <summary>Loose leaves are cut at the spine, before they are bound and never after.</summary>
    TrimSpine,

    /// <summary>Staples or thread go through.</summary>
    Staple,

    /// <summary>The spine is glued into its cover.</summary>
    Glue,

    /// <summary>Copies are folded.</summary>
    Fold,

    /// <summary>Copies lie under weight.</summary>
    Press,

    /// <summary>Head, fore-edge and foot are cut.</summary>
    Trim,

    /// <summary>Finished copies are packed.</summary>
    Pack,

    /// <summary>A step of the press's own.</summary>
    Other,
}
