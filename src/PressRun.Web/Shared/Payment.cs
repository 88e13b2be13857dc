namespace PressRun.Web.Shared;

/// <summary>A payment that is to be written down.</summary>
/// <param name="Place">Place of the person among those one chose from.</param>
/// <param name="Amount">What was paid; below zero where it went back.</param>
/// <param name="Day">When.</param>
public sealed record Payment(int Place, decimal Amount, DateOnly Day);
