using System.Numerics;

namespace PressRun.Engine.Measures;

/// <summary>Decimals as whole numbers, for what must not be rounded on the way.</summary>
internal static class Digits
{
    /// <summary>The digits of a decimal without its sign and its point: 1.20 gives 120.</summary>
    public static BigInteger Of(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        return ((BigInteger)(uint)bits[2] << 64) | ((BigInteger)(uint)bits[1] << 32) | (uint)bits[0];
    }
}
