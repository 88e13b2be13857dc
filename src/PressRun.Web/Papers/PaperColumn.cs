using PressRun.Engine.Comparing;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;
using PressRun.Web.Posting;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Papers;

/// <summary>A column of the table of papers.</summary>
/// <param name="Key">Its name in the code.</param>
/// <param name="Head">Its head.</param>
/// <param name="Value">What it is sorted by; null stands last.</param>
/// <param name="Show">What it says; null where it has nothing to say.</param>
public sealed record PaperColumn(string Key, string Head, Func<PaperRow, decimal?> Value, Func<PaperRow, Shown?> Show)
{
    /// <summary>The columns of a comparison.</summary>
    /// <param name="format">How figures are written.</param>
    /// <param name="posts">True where copies are posted or packed.</param>
    /// <param name="binding">By it the part grows.</param>
    /// <param name="leavesOf">Place of the part whose leaves the headroom is told in.</param>
    /// <param name="cartons">True where the shop's cartons are known.</param>
    public static IReadOnlyList<PaperColumn> Of(PressFormat format, bool posts, Binding binding, int leavesOf, bool cartons)
    {
        Shown? Plain(string? text) => text is null ? null : new Shown(text, null, null);
        List<PaperColumn> columns = [new("unit", Say($"copy costs"), row => row.UnitCost, row => Plain(format.Money(row.UnitCost)))];
        if (posts)
        {
            columns.Add(new("hand", Say($"in hand"), row => row.InHand, row => Plain(row.InHand is { } cost ? format.Money(cost) : null)));
        }

        columns.AddRange(
        [
            new("mass", Say($"weighs"), row => row.Copy.Mass.Grams, row => format.Mass(row.Copy.Mass)),
            new("thick", Say($"thick"), row => row.Copy.Thickness.Millimetres, row => format.Thickness(row.Copy.Thickness)),
            new("creep", Say($"creep"), row => row.Copy.Creep.Millimetres, row => row.Copy.Creep > Engine.Measures.Length.Zero ? format.Thickness(row.Copy.Creep) : null),
            new("freight", Say($"freight"), row => row.Freight.Mass.Grams, row => format.Mass(row.Freight.Mass)),
        ]);
        if (cartons)
        {
            columns.Add(new("cartons", Say($"cartons"), row => row.Freight.Cartons, row => Plain(format.Count(row.Freight.Cartons))));
        }

        if (posts)
        {
            columns.AddRange(
            [
                new("post", Say($"postage"), row => row.Postage?.Price, row => Plain(row.Postage?.Price is { } price ? format.Money(price) : null)),
                new("grams", Say($"to spare"), row => row.Postage?.HeadroomMass?.Grams, row => row.Postage?.HeadroomMass is { } mass ? format.Spare(mass) : null),
                new("mm", Say($"thickness to spare"), row => row.Postage?.HeadroomThickness?.Millimetres, row => row.Postage?.HeadroomThickness is { } length ? format.Spare(length) : null),
                new("leaves", Say($"leaves to spare"), row => Leaves(row, binding, leavesOf), row => Leaves(row, binding, leavesOf) is { } leaves ? Plain(PostWords.Leaves(leaves, format)) : null),
            ]);
        }

        return columns;
    }

    /// <summary>Rows in the order of this column, those without a value last.</summary>
    public IEnumerable<PaperRow> Sort(IEnumerable<PaperRow> rows, bool falling) => falling
        ? rows.OrderBy(row => Value(row) is null).ThenByDescending(row => Value(row))
        : rows.OrderBy(row => Value(row) is null).ThenBy(row => Value(row));

    private static int? Leaves(PaperRow row, Binding binding, int part) =>
        row.Postage?.Price is not null && part < row.HeadroomLeaves.Count ? RoomToGrow.Leaves(binding, part, row.HeadroomLeaves[part]) : null;
}
