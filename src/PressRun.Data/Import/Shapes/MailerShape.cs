using PressRun.Data.Import.Tables;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Envelopes and cartons that copies are posted in, one a row.</summary>
public sealed class MailerShape : TableShape<LibraryItem<Mailer>>
{
    private const int Id = 0;
    private const int NameOf = 1;
    private const int Longer = 2;
    private const int Other = 3;
    private const int Thickness = 4;
    private const int Weight = 5;
    private const int Price = 6;
    private const int Archived = 7;

    /// <inheritdoc/>
    public override string Name => "mailers";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.IdColumn("id|sku|article no|item no|code"),
        Cells.NameColumn("Mailer", "name|mailer|envelope|box|description|product|bezeichnung"),
        new("length", "Length", new LengthCell(JobRules.Side)) { Required = true, About = "its longer outer side, and Width the other, as the carrier measures them", Words = Cells.Words("length|long side|outer length|height|lange|longueur|largo") },
        new("width", "Width", new LengthCell(JobRules.Side)) { Required = true, Words = Cells.Words("width|short side|outer width|breite|largeur|ancho") },
        new("thickness", "Adds to thickness", new LengthCell(JobRules.MailerSide))
        {
            About = "how much thicker the piece is than the copies in it, such as 0.5 mm for paper on both sides and 3 mm for board or padding: gauge yours", Words = Cells.Words("thickness|adds|depth|dicke|epaisseur"),
        },
        new("mass", "Weighs", new MassCell(JobRules.MassOrNone)) { About = "empty, with its board, tape and label", Words = Cells.Words("mass|weight|weighs|tare|gewicht|poids|peso") },
        new("price", "Price", Cells.Money) { Words = Cells.Words("price|cost|each|unit price|preis|prix|precio") },
        Cells.Archived,
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(LibraryItem<Mailer> thing)
    {
        var mailer = thing.Item;
        yield return
        [
            mailer.Id, mailer.Name, mailer.Length, mailer.Width, mailer.Thickness, mailer.Mass, mailer.Price, thing.Archived ? true : null,
        ];
    }

    /// <inheritdoc/>
    public override LibraryItem<Mailer> Thing(IReadOnlyList<object?[]> rows, Refuse refuse)
    {
        var row = rows[0];
        var mailer = new Mailer(
            row.Text(Id),
            row.Text(NameOf),
            row.Value<Length>(Longer),
            row.Value<Length>(Other),
            row.Value<Length>(Thickness),
            row.Value<Mass>(Weight),
            row.Value<decimal>(Price));
        return new LibraryItem<Mailer>(mailer, row.Value<bool>(Archived), 0);
    }

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(LibraryItem<Mailer> thing) => LibraryKey.Of(thing.Item.Id, thing.Item.Name, NameOf);
}
