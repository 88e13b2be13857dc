namespace PressRun.Web.Shared;

/// <summary>What became of a save.</summary>
/// <param name="Problem">What stands in the way, as a sentence; null where it is stored, or where the page shows both versions because somebody else was first.</param>
/// <param name="Version">The version that was stored; null where nothing was.</param>
public readonly record struct SaveAnswer(string? Problem, uint? Version);
