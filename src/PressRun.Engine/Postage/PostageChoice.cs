using PressRun.Engine.Measures;

namespace PressRun.Engine.Postage;

/// <summary>A limit that a piece of mail can break, in the order in which they are reported.</summary>
public enum PostageLimit
{
    /// <summary>The longest side.</summary>
    Length,

    /// <summary>The other side.</summary>
    Width,

    /// <summary>Thickness.</summary>
    Thickness,

    /// <summary>Mass.</summary>
    Mass,
}

/// <summary>A service that does not take a piece, by one of the limits it breaks.</summary>
/// <param name="ServiceId">The service.</param>
/// <param name="Limit">The limit.</param>
/// <param name="By">By how much: millimetres, or grams for mass; positive, whether too much or too little.</param>
public readonly record struct RefusedService(string ServiceId, PostageLimit Limit, decimal By)
{
    /// <summary>True where the piece is less than the service's least.</summary>
    public bool TooLittle { get; init; }
}

/// <summary>The cheapest service that takes a channel's piece of mail.</summary>
/// <param name="ChannelId">The channel.</param>
/// <param name="ServiceId">The service; null where none takes it.</param>
/// <param name="Mass">Copies and mailer.</param>
/// <param name="Thickness">Copies and mailer.</param>
/// <param name="Price">Postage of the piece; null where none takes it.</param>
/// <param name="HeadroomMass">To the limit of the step taken; null where none is.</param>
/// <param name="HeadroomThickness">To the service's thickness limit; null where there is none.</param>
/// <param name="Refused">Every limit broken by every other service of the region that does not take it.</param>
public sealed record PostageChoice(
    string ChannelId,
    string? ServiceId,
    Mass Mass,
    Length Thickness,
    decimal? Price,
    Mass? HeadroomMass,
    Length? HeadroomThickness,
    IReadOnlyList<RefusedService> Refused)
{
    /// <summary>By how much of its mass a piece may come out heavier than reckoned, as a fraction: paper's grammage varies by some percent between makings (common practice).</summary>
    public const decimal PaperVaries = 0.03m;
}
