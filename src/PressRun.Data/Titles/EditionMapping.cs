using Microsoft.EntityFrameworkCore;
using PressRun.Engine.Editions;

namespace PressRun.Data.Titles;

/// <summary>Rows of an edition to its record and back.</summary>
internal static class EditionMapping
{
    /// <summary>Editions with all that their records hold, in one query, so that parts and version are of one moment.</summary>
    public static IQueryable<EditionRow> Whole(this IQueryable<EditionRow> editions) => editions
        .Include(edition => edition.Title)
        .Include(edition => edition.Copies)
        .Include(edition => edition.Parts.OrderBy(part => part.Position))
        .Include(edition => edition.FixedCosts.OrderBy(cost => cost.Position))
        .AsSingleQuery();

    public static EditionRecord ToRecord(this EditionRow row) => new(
        row.Id,
        row.TitleId,
        row.Title.Title,
        row.Printing,
        row.PrintedOn,
        row.CopiesPrinted,
        row.Copies.OnHand,
        row.Price,
        row.FreeCopies,
        new Size(row.PageWidth, row.PageHeight),
        row.Binding,
        row.Bleed,
        new Trim(row.TrimHead, row.TrimFoot, row.TrimForeEdge, row.TrimSpine),
        row.Fold,
        row.WeighedMass is null && row.WeighedThickness is null ? null : new Weighed(row.WeighedMass, row.WeighedThickness),
        [.. row.Parts.OrderBy(part => part.Position).Select(part => part.ToRecord())],
        [.. row.FixedCosts.OrderBy(cost => cost.Position).Select(cost => new FixedCost(cost.Name, cost.Amount))],
        row.Archived,
        row.Copies.CountNeeded,
        row.Version);

    /// <summary>Takes everything from a record but its ids, its title, its version and what the copies ledger says of it.</summary>
    public static void Take(this EditionRow row, EditionRecord record)
    {
        (row.Printing, row.Price, row.FreeCopies) = (record.Printing, record.Price, record.FreeCopies);
        (row.PageWidth, row.PageHeight, row.Binding, row.Bleed) = (record.Page.Width, record.Page.Height, record.Binding, record.Bleed);
        (row.TrimHead, row.TrimFoot) = (record.Trim.Head, record.Trim.Foot);
        (row.TrimForeEdge, row.TrimSpine, row.Fold) = (record.Trim.ForeEdge, record.Trim.Spine, record.Fold);
        (row.WeighedMass, row.WeighedThickness, row.Archived) = (record.Weighed?.Mass, record.Weighed?.Thickness, record.Archived);
        TakeParts(row, record.Parts);
        TakeFixedCosts(row, record.FixedCosts);
    }

    private static void TakeParts(EditionRow row, IReadOnlyList<EditionPart> parts)
    {
        row.Parts.RemoveAll(part => parts.All(wanted => wanted.Id != part.Id));
        for (var position = 0; position < parts.Count; position++)
        {
            var wanted = parts[position];
            var part = row.Parts.Find(candidate => candidate.Id == wanted.Id);
            if (part is null)
            {
                part = new PartRow { PressId = row.PressId, EditionId = row.Id, Id = Guid.CreateVersion7() };
                row.Parts.Add(part);
            }

            part.Take(wanted.Part, position);
        }
    }

    private static void TakeFixedCosts(EditionRow row, IReadOnlyList<FixedCost> costs)
    {
        row.FixedCosts.RemoveAll(cost => cost.Position >= costs.Count);
        for (var position = 0; position < costs.Count; position++)
        {
            var cost = row.FixedCosts.Find(candidate => candidate.Position == position);
            if (cost is null)
            {
                cost = new FixedCostRow { PressId = row.PressId, EditionId = row.Id, Position = position };
                row.FixedCosts.Add(cost);
            }

            (cost.Name, cost.Amount) = (costs[position].Name, costs[position].Amount);
        }
    }
}
