using System.Globalization;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;

namespace PressRun.Data.Tests.Import;

/// <summary>Wordings are those that print shops commonly use (from memory); amounts and days are invented.</summary>
public sealed class NoteTermsTests
{
    private static readonly CellManners English = new(CultureInfo.GetCultureInfo("en-GB"), UnitSystem.Metric);

    private static readonly CellManners German = new(CultureInfo.GetCultureInfo("de-DE"), UnitSystem.Metric);

    private static readonly Shop Empty = PriceListTable.Empty("An invented shop", new DateOnly(2026, 1, 1));

    [Theory]
    [InlineData("Prices without 20 % tax", 20)]
    [InlineData("All prices excl. 19% VAT", 19)]
    [InlineData("Alle Preise netto, zzgl. 19 % MwSt.", 19)]
    [InlineData("Preise inkl. Versand, exkl. 8,1 % MWST", 8.1)]
    [InlineData("Prix HT, TVA 5,5 % en sus", 5.5)]
    [InlineData("19 % VAT not included", 19)]
    public void Tax_on_top_is_read(string note, double percent) => Assert.Equal((decimal)percent / 100m, Assert.IsType<NotedTax>(Assert.Single(Read(note))).Rate);

    [Theory]
    [InlineData("Prices include 20 % tax: incl. 20 % VAT")]
    [InlineData("Alle Preise inkl. 19 % MwSt.")]
    [InlineData("Prix TTC (TVA 20 %)")]
    public void Tax_in_the_prices_is_told_and_nothing_can_be_taken_of_it(string note)
    {
        var term = Assert.IsType<NotedTaxInside>(Assert.Single(Read(note)));
        Assert.False(term.Fits(Empty));
        Assert.Equal(0m, term.Into(Empty).Order.TaxRate);
    }

    [Theory]
    [InlineData("Delivery 6.90, free from 150.00", "6.90", "150")]
    [InlineData("Delivery: \u00A36.90 (free over \u00A31,500.00)", "6.90", "1500")]
    [InlineData("Lieferung 6,90 \u20AC, frei ab 150,00 \u20AC", "6.90", "150")]
    [InlineData("Versandkosten 6,90 EUR; ab 1.500,00 EUR Warenwert frei Haus", "6.90", "1500")]
    [InlineData("Ab 150,- \u20AC versandkostenfrei, sonst 6,90 \u20AC", "6.90", "150")]
    [InlineData("Livraison 6,90 \u20AC, franco \u00E0 partir de 150 \u20AC", "6.90", "150")]
    [InlineData("Shipping CHF 6.90 per order", "6.90", null)]
    [InlineData("Free delivery from 150.00", null, "150")]
    public void Delivery_is_read_with_the_value_from_which_it_is_free(string note, string? price, string? freeFrom)
    {
        var term = Assert.IsType<NotedDelivery>(Assert.Single(Read(note)));
        Assert.Equal((Number(price), Number(freeFrom)), (term.Flat, term.FreeFrom));
    }

    [Fact]
    public void Tax_on_delivery_is_asked_where_notes_tell_of_tax_and_of_a_price_of_delivery()
    {
        NoteLine[] notes = [new(2, "alle Preise netto zzgl. 19 % MwSt."), new(14, "Lieferung 7,90 EUR, ab 120 EUR Warenwert frei")];
        var terms = NoteTerms.Of(notes, German);
        Assert.Equal([typeof(NotedTax), typeof(NotedTaxOnDelivery), typeof(NotedDelivery)], terms.Select(term => term.GetType()));
        var list = NotedTerm.Into(Empty, terms);
        Assert.Equal((0.19m, true), (list.Order.TaxRate, list.Order.TaxOnDelivery));
        Assert.False(NotedTerm.Into(Empty, terms.Where(term => term is not NotedTaxOnDelivery)).Order.TaxOnDelivery);
        Assert.DoesNotContain(NoteTerms.Of([notes[0], new(14, "Lieferung frei ab 120 EUR")], German), term => term is NotedTaxOnDelivery);
    }

    [Fact]
    public void A_delivery_price_without_a_mass_holds_whatever_the_order_weighs()
    {
        var list = Read("Delivery 6.90, free from 150.00")[0].Into(Empty);

        Assert.Equal(6.90m, list.Order.Delivery!.Steps.Single().Price);
        Assert.Equal((0m, 150m), (list.Order.Delivery.PerFurtherKilogram, list.Order.Delivery.FreeFrom));

        // No mass is shown that no file said, and what is shown is read as it was.
        var shape = new DeliveryShape();
        var rows = shape.Texts(new DeliveryPrice(list.Order.Delivery.Steps[0]), German).ToList();
        Assert.Equal(["", "6,90"], Assert.Single(rows));
        Assert.Equal(list.Order.Delivery.Steps[0], Assert.Single(shape.Read(rows, German).Things).Thing.Step);
    }

    [Fact]
    public void Delivery_by_mass_is_read_as_steps_and_joined_with_what_another_line_says()
    {
        var term = Assert.IsType<NotedDelivery>(Assert.Single(Read("Versand bis 2 kg 4,90, bis 31,5 kg 12,90", "Ab 250 \u20AC portofrei")));

        Assert.Equal([(2m, 4.90m), (31.5m, 12.90m)], term.Steps.Select(step => (step.Most.Kilograms, step.Price)));
        Assert.Equal((null, 250m), (term.Flat, term.FreeFrom));
        Assert.Contains("portofrei", term.Line.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Free_delivery_alone_fits_a_list_that_has_a_price_for_it()
    {
        var term = Read("Free delivery from 150.00")[0];
        var priced = Read("Delivery 6.90")[0].Into(Empty);

        Assert.False(term.Fits(Empty));
        Assert.True(term.Fits(priced));
        Assert.Equal((6.90m, 150m), (term.Into(priced).Order.Delivery!.Steps[0].Price, term.Into(priced).Order.Delivery!.FreeFrom));
    }

    [Theory]
    [InlineData("Valid from 1.3.2026")]
    [InlineData("Preisliste g\u00FCltig ab 01.03.2026")]
    [InlineData("Preise ab 1. M\u00E4rz 2026")]
    [InlineData("Prices as of 1 March 2026")]
    [InlineData("Tarif valable \u00E0 partir du 1er mars 2026")]
    [InlineData("Stand: 2026-03-01")]
    public void The_day_from_which_prices_hold_is_read(string note)
    {
        var term = Assert.IsType<NotedDay>(Assert.Single(Read(note)));
        Assert.Equal(new DateOnly(2026, 3, 1), term.Day);
        Assert.Equal(new DateOnly(2026, 3, 1), term.Into(Empty).ValidFrom);
    }

    [Fact]
    public void Minimum_set_up_and_discount_are_read()
    {
        Assert.Equal(25m, Read("Minimum order 25.00")[0].Into(Empty).Order.Minimum);
        Assert.Equal(25m, Read("Mindestbestellwert: 25,00 \u20AC")[0].Into(Empty).Order.Minimum);
        Assert.Equal(5m, Read("Set-up per order 5.00")[0].Into(Empty).SetUp.Order);
        Assert.Equal(new DiscountStep(400m, 0.05m), Read("From 400.00 5 % off")[0].Into(Empty).Order.Discounts.Single());
        Assert.Equal(new DiscountStep(400m, 0.05m), Read("5 % Rabatt ab 400 \u20AC")[0].Into(Empty).Order.Discounts.Single());
    }

    [Theory]
    [InlineData("Novemberdruck, Inhaber A. Muster")]
    [InlineData("Delivery within 5 days")]
    [InlineData("Lieferzeit 5 bis 7 Werktage")]
    [InlineData("Minimum order 25 copies")]
    [InlineData("Prices do not include delivery")]
    [InlineData("Valid until 31.12.2026")]
    [InlineData("Papers contain 30 % cotton")]
    [InlineData("Questions about delivery: 0123 456789")]
    public void What_is_no_term_is_not_read_as_one(string note) => Assert.Empty(Read(note));

    [Fact]
    public void One_line_may_say_several_terms()
    {
        var terms = Read("Prices without 20 % tax. Minimum order 25.00. Delivery 6.90, free from 150.00.");

        Assert.Equal([typeof(NotedTax), typeof(NotedTaxOnDelivery), typeof(NotedMinimum), typeof(NotedDelivery)], terms.Select(term => term.GetType()));
    }

    [Fact]
    public void Notes_stand_above_the_heads_and_below_the_rows_and_are_no_rows()
    {
        const string text = """
            Preisliste gültig ab 01.03.2026;;;;
            Bezeichnung;Format;g/m²;Dicke (µm);Preis je 100
            Moosgrund;320 x 450;80;98;4,20
            Moosgrund;320 x 450;120;150;6,40

            Alle Preise zzgl. 20 % MwSt.;;;;
            Lieferung 6,90, frei ab 150,00;;;;
            """;
        var (notes, problems, offers) = Notes(text);

        Assert.Equal([1, 6, 7], notes.Lines.Select(line => line.Row));
        Assert.Equal(4, notes.LastRow);
        Assert.Empty(problems);
        Assert.Equal(2, offers);
    }

    [Fact]
    public void A_sentence_that_commas_have_parted_is_read_whole()
    {
        const string text = """
            Name,Sheet,Weight (gsm),Caliper (um),Price
            Mossground,SRA3,80,98,0.042
            "Delivery 6.90, free from 150.00"
            Minimum order 25.00, delivery 6.90
            """;
        var (notes, problems, _) = Notes(text);

        Assert.Empty(problems);
        Assert.Equal(["Delivery 6.90, free from 150.00", "Minimum order 25.00, delivery 6.90"], notes.Lines.Select(line => line.Text));
    }

    [Fact]
    public void Of_thousands_of_rows_that_might_be_notes_only_the_last_are_looked_into()
    {
        var rows = string.Join('\n', Enumerable.Range(1, 2000).Select(row => $"delivery {row} from us"));
        var (notes, problems, offers) = Notes($"Name,Sheet,Weight (gsm),Caliper (um),Price\nMossground,SRA3,80,98,0.042\n{rows}");

        Assert.Equal((40, 1803), (notes.Lines.Count, notes.Lines[0].Row));
        Assert.Equal(1802, notes.LastRow);
        Assert.Equal((1, 1800), (offers, problems.Select(problem => problem.Row).Distinct().Count()));
    }

    [Fact]
    public void A_row_that_is_not_right_is_no_note()
    {
        const string text = """
            Bezeichnung;Format;g/m²;Dicke (µm);Preis je 100
            Moosgrund;320 x 450;80;98;4,20
            Moosgrund;320 x 450;120;150;
            """;
        var (notes, problems, _) = Notes(text);

        Assert.Empty(notes.Lines);
        Assert.Equal(3, Assert.Single(problems).Row);
    }

    private static IReadOnlyList<NotedTerm> Read(params string[] notes) =>
        NoteTerms.Of(notes.Select((text, at) => new NoteLine(at + 1, text)), notes[0].Any(char.IsDigit) && notes[0].Contains('\u20AC', StringComparison.Ordinal) ? German : English);

    private static decimal? Number(string? text) => text is null ? null : decimal.Parse(text, CultureInfo.InvariantCulture);

    private static (FileNotes Notes, List<CellProblem> Problems, int Offers) Notes(string text)
    {
        using var file = new TempCsv(text);
        var source = CsvSource.Open(file.Path);
        var shape = PriceListTable.For([], []).Offers;
        var mapping = MappingGuess.Of(source, shape.Columns, German);
        var notes = FileNotes.Of(source, mapping, shape.Columns, German);
        var problems = new List<CellProblem>();
        var offers = CsvReading.Things(source, mapping with { LastRow = notes.LastRow }, shape, German, problems.Add).Count();
        return (notes, problems, offers);
    }
}
