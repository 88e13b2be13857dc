namespace PressRun.Data.Access;

/// <summary>What somebody may do in a press; each role may do what the ones before it may.</summary>
public enum PressRole
{
    /// <summary>Sees everything and changes nothing.</summary>
    Reader,

    /// <summary>Changes titles, printings, runs, libraries and the ledger.</summary>
    Editor,

    /// <summary>Also looks after people and keys, the press's own settings, and takes titles out for good.</summary>
    Owner,
}
