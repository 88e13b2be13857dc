using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <summary>What the shop sends.</summary>
/// <param name="Mass">Goods and cartons.</param>
/// <param name="Cartons">How many cartons; 0 where the shop names none.</param>
/// <param name="HeaviestCarton">The fullest carton with its tare; zero where the shop names none.</param>
public readonly record struct FreightEstimate(Mass Mass, long Cartons, Mass HeaviestCarton)
{
    /// <summary>A carton heavier than this asks for care: the load constant of the revised NIOSH lifting equation (Waters and others 1993),
    /// what a healthy adult may lift under the best conditions.</summary>
    public static readonly Mass LiftingLimit = Mass.FromKilograms(23m);
}
