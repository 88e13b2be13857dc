using System.Globalization;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile;

namespace PressRun.Data.Conversions;

/// <summary>A length as exact millimetres.</summary>
internal sealed class LengthConverter() : ValueConverter<Length, decimal>(length => length.Millimetres, value => Length.FromMillimetres(value));

/// <summary>A mass as exact grams.</summary>
internal sealed class MassConverter() : ValueConverter<Mass, decimal>(mass => mass.Grams, value => Mass.FromGrams(value));

/// <summary>A paper's weight as its maker states it: <c>120 gsm</c>, <c>80 lb cover</c>. The grammage would lose which of them it was.</summary>
internal sealed class PaperWeightConverter() : ValueConverter<PaperWeight, string>(weight => MeasureText.Exact(weight), text => Read(text))
{
    private static PaperWeight Read(string text) => MeasureText.TryParseWeight(text, CultureInfo.InvariantCulture, out var weight)
        ? weight
        : throw new InvalidOperationException($"The database holds the paper weight {text}, which is none.");
}

/// <summary>A press's id as its uuid.</summary>
internal sealed class PressIdConverter() : ValueConverter<PressId, Guid>(id => id.Value, value => new PressId(value));
