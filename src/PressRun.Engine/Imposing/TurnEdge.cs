namespace PressRun.Engine.Imposing;

/// <summary>The edge about which a printer turns a sheet over for its second side. Of a square sheet the upright edge counts as the long one.</summary>
public enum TurnEdge
{
    /// <summary>The longer edge: the usual setting.</summary>
    Long,

    /// <summary>The shorter edge.</summary>
    Short,
}
