namespace PressRun.Web.Quotes;

/// <summary>A payment that is to be written down.</summary>
/// <param name="Part">Place of the part of the bill.</param>
/// <param name="Amount">What was paid; below zero where it went back.</param>
/// <param name="Day">When.</param>
public sealed record Payment(int Part, decimal Amount, DateOnly Day);
