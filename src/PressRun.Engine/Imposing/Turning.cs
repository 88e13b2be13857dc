using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>How what is printed on a back lies behind the front.</summary>
internal static class Turning
{
    /// <summary>The edge that runs up and down the sheet as it is drawn, or the one across it.</summary>
    public static TurnEdge Edge(Sheet sheet, bool upright) => upright == sheet.Height >= sheet.Width ? TurnEdge.Long : TurnEdge.Short;

    /// <summary>A box of the front, seen through the sheet, on the back's own picture; and the other way round.</summary>
    public static Box Over(Sheet sheet, TurnEdge edge, Box box) => IsUpright(sheet, edge)
        ? box with { Left = sheet.Width - box.Right }
        : box with { Top = sheet.Height - box.Bottom };

    /// <summary>A point likewise.</summary>
    public static Spot Over(Sheet sheet, TurnEdge edge, Spot spot) => IsUpright(sheet, edge)
        ? spot with { Across = sheet.Width - spot.Across }
        : spot with { Down = sheet.Height - spot.Down };

    /// <summary>A head's direction likewise, in clockwise quarter turns from upwards.</summary>
    public static int Over(Sheet sheet, TurnEdge edge, int quarterTurns) => IsUpright(sheet, edge) ? Mirrored(quarterTurns) : (6 - quarterTurns) % 4;

    /// <summary>A head's direction seen from behind by who walks around the sheet.</summary>
    public static int Mirrored(int quarterTurns) => (4 - quarterTurns) % 4;

    private static bool IsUpright(Sheet sheet, TurnEdge edge) => Edge(sheet, upright: true) == edge;
}
