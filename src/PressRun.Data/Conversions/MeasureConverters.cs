using System.Globalization;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Conversions;

/// <summary>A length as exact millimetres.</summary>
internal sealed class LengthConverter() : ValueConverter<Length, decimal>(length => length.Millimetres, value => Length.FromMillimetres(value));

/// <summary>A mass as exact grams.</summary>
internal sealed class MassConverter() : ValueConverter<Mass, decimal>(mass => mass.Grams, value => Mass.FromGrams(value));

/// <summary>A paper's weight as its maker states it: <c>120 gsm</c>, <c>80 lb cover</c>. The grammage would lose which of them it was.</summary>
internal sealed class PaperWeightConverter() : ValueConverter<PaperWeight, string>(weight => Write(weight), text => Read(text))
{
    private const string Grammage = "gsm";

    private static string Write(PaperWeight weight)
    {
        var stated = weight.Stated.ToString(CultureInfo.InvariantCulture);
        return weight.Category is { } category ? $"{stated} lb {category.ToString().ToLowerInvariant()}" : $"{stated} {Grammage}";
    }

    private static PaperWeight Read(string text)
    {
        var words = text.Split(' ');
        var stated = decimal.Parse(words[0], CultureInfo.InvariantCulture);
        return words[1] == Grammage
            ? PaperWeight.FromGrammage(stated)
            : PaperWeight.FromBasisWeight(stated, Enum.Parse<PaperCategory>(words[2], ignoreCase: true));
    }
}

/// <summary>A press's id as its uuid.</summary>
internal sealed class PressIdConverter() : ValueConverter<PressId, Guid>(id => id.Value, value => new PressId(value));
