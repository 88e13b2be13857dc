using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Sheets;

/// <summary>Where pieces lie on the sheets of one run, searched for once however many parts have the same sheet and the same piece: a search for a mixture can take a good part of a
/// second. For one piece of work, not to be shared by several at once.</summary>
/// <param name="bleed">Whether the unprintable margin must be kept free.</param>
internal sealed class Mixtures(bool bleed)
{
    private readonly Dictionary<(Sheet Sheet, Size Piece), IReadOnlyList<(Length Left, Length Top, bool Turned)>?> known = [];

    /// <inheritdoc cref="PiecesOnSheet.Places"/>
    public IReadOnlyList<(Length Left, Length Top, bool Turned)> Places(Sheet sheet, Size piece) => PiecesOnSheet.Places(sheet, piece, bleed, On(sheet, piece));

    /// <inheritdoc cref="PiecesOnSheet.AnyTurned"/>
    public bool AnyTurned(Sheet sheet, Size piece) => PiecesOnSheet.AnyTurned(sheet, piece, bleed, On(sheet, piece));

    private IReadOnlyList<(Length Left, Length Top, bool Turned)>? On(Sheet sheet, Size piece) =>
        known.TryGetValue((sheet, piece), out var found) ? found : known[(sheet, piece)] = PiecesOnSheet.Mixed(sheet, piece, bleed);
}
