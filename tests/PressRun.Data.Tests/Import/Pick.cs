using CsCheck;

namespace PressRun.Data.Tests.Import;

/// <summary>Generators of a few fixed things.</summary>
internal static class Pick
{
    public static Gen<T> From<T>(params T[] things) => Gen.Int[0, things.Length - 1].Select(at => things[at]);
}
