using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Carriers' services by their dated tables, a row a step.</summary>
/// <param name="usualRegion">Where a service goes that names no region: the one that the press has named so far.</param>
public sealed class PostageShape(string usualRegion = PostageShape.Home) : TableShape<LibraryItem<PostageService>>
{
    /// <summary>Where a service goes that names no region, as long as the press has named none: nobody has to invent one.</summary>
    public const string Home = "home";

    private const int Id = 0;
    private const int NameOf = 1;
    private const int Region = 2;
    private const int ValidFrom = 3;
    private const int Most = 4;
    private const int Price = 5;
    private const int FirstLimit = 6;
    private const int Archived = 12;

    /// <inheritdoc/>
    public override string Name => "postage services";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.IdColumn("id|code"),
        Cells.NameColumn("Service", "name|service|product|tariff|produkt|tarif|servicio"),
        new("region", "Region", Cells.Name) { Required = true, OfThing = true, Otherwise = usualRegion, About = "where it goes, in your own word", Words = Cells.Words("region|zone|destination|country|to|ziel|land|pays|destino") },
        new("validFrom", "From", new DayCell())
        {
            Required = true, OfThing = true, Words = Cells.Words("valid from|from|date|in force|effective|gultig ab|ab|valable des|desde"),
        },
        new("most", "Up to", new MassCell(JobRules.MassAboveNone))
        {
            Required = true, Step = StepPart.UpTo, About = "the heaviest piece at this price, copies and mailer together; the next row goes on from there", Words = Cells.Words("up to|most|max weight|maximum weight|weight|weight to|bis|gewicht|jusqu a|poids|hasta|peso"),
        },
        new("price", "Price", Cells.Money) { Required = true, Step = StepPart.Price, Words = Cells.Words("price|rate|postage|cost|preis|porto|prix|tarif|precio") },
        Limit("maxLength", "Longest", "the largest piece that the carrier takes, as are Widest and Thickest; leave empty what it does not limit", "max length|maximum length|length|longest|lange|longueur"),
        Limit("maxWidth", "Widest", null, "max width|maximum width|width|widest|max height|breite|largeur"),
        Limit("maxThickness", "Thickest", null, "max thickness|maximum thickness|thickness|thickest|max depth|depth|dicke|hohe|epaisseur"),
        Limit("minLength", "Shortest", "the smallest piece that it takes, as are Narrowest and Thinnest", "min length|minimum length|shortest"),
        Limit("minWidth", "Narrowest", null, "min width|minimum width|narrowest|min height"),
        Limit("minThickness", "Thinnest", null, "min thickness|minimum thickness|thinnest"),
        Cells.Archived,
    ];

    /// <summary>The region of those that name most services; <see cref="Home"/> where there are none.</summary>
    public static string UsualRegion(IEnumerable<PostageService> services) =>
        services.GroupBy(service => service.Region, StringComparer.Ordinal).OrderByDescending(region => region.Count()).FirstOrDefault()?.Key ?? Home;

    /// <inheritdoc/>
    public override IReadOnlyList<int> Naming => [NameOf, Region, ValidFrom];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(LibraryItem<PostageService> thing)
    {
        var service = thing.Item;
        foreach (var step in service.Steps)
        {
            yield return
            [
                service.Id, service.Name, service.Region, service.ValidFrom, step.Most, step.Price,
                service.MaxLength, service.MaxWidth, service.MaxThickness, service.MinLength, service.MinWidth, service.MinThickness,
                thing.Archived ? true : null,
            ];
        }
    }

    /// <inheritdoc/>
    public override LibraryItem<PostageService>? Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var steps = rows.Select(row => new MassStep(row.Value<Mass>(Most), row.Value<decimal>(Price))).ToList();
        if (!StepRows.Rise(steps, step => step.Most.Grams, Most, refuse))
        {
            return null;
        }

        var first = rows[0];
        var service = new PostageService(
            first.Text(Id),
            first.Text(NameOf),
            first.Text(Region),
            first.Value<DateOnly>(ValidFrom),
            LimitOf(first, 0),
            LimitOf(first, 1),
            LimitOf(first, 2),
            LimitOf(first, 3),
            LimitOf(first, 4),
            LimitOf(first, 5),
            steps);
        return new LibraryItem<PostageService>(service, first.Value<bool>(Archived), 0);
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(LibraryItem<PostageService> thing) =>
        ($"{ServiceKey(thing.Item.Id, thing.Item.Name, thing.Item.Region)}|{thing.Item.ValidFrom:yyyy-MM-dd}", NameOf);

    /// <summary>True where a row is one more step of the service of the row before: by its id, or by name and region where it has none yet, as a row that
    /// somebody has just typed.</summary>
    public override bool GoesOn(object?[] before, object?[] row)
    {
        var id = row.Text(Id).Length == 0 ? "" : before.Text(Id);
        return ServiceKey(id, before.Text(NameOf), before.Text(Region)) == ServiceKey(row.Text(Id), row.Text(NameOf), row.Text(Region))
            && Equals(before[ValidFrom], row[ValidFrom]);
    }

    private static string ServiceKey(string id, string name, string region) =>
        id.Length > 0 ? "#" + id : $"{SearchText.Fold(name)}|{SearchText.Fold(region)}";

    private static Length? LimitOf(object?[] row, int limit) => row.Maybe<Length>(FirstLimit + limit);

    private static Column Limit(string key, string title, string? about, string words) =>
        new(key, title, new LengthCell(JobRules.PostageLimit)) { OfThing = true, About = about, Words = Cells.Words(words) };
}
