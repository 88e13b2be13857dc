using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Data.Import.Shapes;

/// <summary>What print shops in English, German, French and neighbouring languages write for inks, finishes and units. The first word of each is the one that PressRun
/// writes; signs, case and accents do not count.</summary>
internal static class PrintWords
{
    public static CellKind Ink { get; } = Choice(
        within: true,
        (Engine.Editions.Ink.Colour, "colour", "color|colours|colors|full colour|full color|four colour|four color|4 colour|4 color|process|cmyk|ymck|4/0|4/4|4|4c|4/0 c|4/4 c|"
            + "farbe|farben|farbig|farbdruck|bunt|buntdruck|vierfarbig|4 farbig|4/0 farbig|4/4 farbig|euroskala|couleur|couleurs|en couleur|quadri|quadrichromie|4 couleurs|"
            + "kleur|full colour kleur|colori|a colori|colore|quadricromia|a color|todo color|cuatricromia|cor|a cores|f\u00E4rg|farve|farge|kolor"),
        (Engine.Editions.Ink.Black, "black", "b/w|bw|b&w|black and white|black & white|black white|mono|monochrome|1 colour|1 color|one colour|one color|greyscale|grayscale|grey|gray|k|1/0|1/1|1|1c|"
            + "black only|black ink|schwarz|sw|s/w|s+w|schwarzdruck|schwarz wei\u00DF|schwarzwei\u00DF|einfarbig|1 farbig|1/0 farbig|1/1 farbig|graustufen|noir|nb|n/b|noir et blanc|noir blanc|monochrome noir|1 couleur|"
            + "zwart|zwart wit|zw|z/w|nero|bianco e nero|bianco nero|b/n|bn|negro|blanco y negro|blanco negro|preto|preto e branco|p/b|pb|svart|svartvit|svart vit|sort|sort hvid|s/h|czarny|czarno bialy|cz b"));

    public static CellKind Finish { get; } = Choice(
        within: false,
        (Engine.Paper.Finish.Coated, "coated", "gloss|glossy|silk|satin|matt|matte|matt coated|matte coated|gloss coated|art|art paper|"
            + "gestrichen|matt gestrichen|gl\u00E4nzend gestrichen|gl\u00E4nzend|seidenmatt|bilderdruck|bilderdruck matt|bilderdruck gl\u00E4nzend|kunstdruck|"
            + "couch\u00E9|couch\u00E9 mat|couch\u00E9 brillant|couch\u00E9 satin\u00E9|brillant|satin\u00E9"),
        (Engine.Paper.Finish.Uncoated, "uncoated", "offset|natural|book|bookwove|bond|wove|laid|text|ungestrichen|nicht gestrichen|naturpapier|natur|werkdruck|"
            + "non couch\u00E9|offset blanc|bouffant|naturel|verg\u00E9|v\u00E9lin"));

    public static CellKind Unit { get; } = Choice(
        within: false,
        (FinishingUnit.Copy, "copy", "copies|per copy|each copy|book|books|per book|booklet|booklets|exemplar|exemplare|ex|expl|je exemplar|pro exemplar|heft|hefte|buch|b\u00FCcher|"
            + "exemplaire|exemplaires|par exemplaire|livre|livres|cahier|cahiers"),
        (FinishingUnit.Sheet, "sheet", "sheets|per sheet|bogen|b\u00F6gen|druckbogen|druckb\u00F6gen|je bogen|pro bogen|feuille|feuilles|par feuille"),
        (FinishingUnit.Piece, "piece", "pieces|per piece|pc|pcs|nutzen|teil|teile|je nutzen|pro nutzen|pi\u00E8ce|pi\u00E8ces|par pi\u00E8ce"),
        (FinishingUnit.Cut, "cut", "cuts|per cut|schnitt|schnitte|je schnitt|pro schnitt|coupe|coupes|par coupe"),
        (FinishingUnit.Edition, "edition", "editions|once|per edition|title|per title|job|per job|order|per order|flat|flat rate|lump sum|einmalig|pauschal|pauschale|auflage|"
            + "je auflage|pro auflage|auftrag|je auftrag|pro auftrag|forfait|forfaitaire|une fois|par tirage|tirage"));

    private static ChoiceCell<T> Choice<T>(bool within, params (T Value, string Written, string Understood)[] words)
        where T : notnull =>
        new([.. words.Select(word => (word.Written, word.Value)), .. words.SelectMany(word => Cells.Words(word.Understood).Select(understood => (understood, word.Value)))]) { Within = within };
}
