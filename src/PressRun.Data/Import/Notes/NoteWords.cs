using System.Text.RegularExpressions;

namespace PressRun.Data.Import.Notes;

/// <summary>How shops in English, German, French and a few neighbouring languages put their terms. No pattern crosses a number that is not its own, and gaps are short.</summary>
internal static partial class NoteWords
{
    private const RegexOptions Manner = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;

    // 6.90, 6,90, 1.500,00, 1'500, 150: whole or not at all, and no part of a day or of a number with a zero in front.
    private const string Number = @"(?!0\d)(?>\d{1,3}(?:[.,'\u2019\u00A0\u202F ]\d{3})+(?!\d)(?:[.,]\d{1,4})?|\d+(?:[.,]\d{1,4})?)(?![.,/]\d)";

    private const string NoAmount =
        @"(?!\s*(?:%|kg|g\b|lbs?\b|oz|mm|cm|days?|working|business|weeks?|hours?|h\b|tagen?|werktagen?|arbeitstagen?|wochen?|stunden|jours?|semaines?|dagen|giorni|d[i\u00ED]as"
        + @"|copies|sheets?|pieces|pcs|st[u\u00FC]ck|ex\b|exemplar|bogen|blatt|feuilles?|exemplaires))";

    private const string Delivery =
        @"\b(?!versandkostenfrei)(?:delivery|shipping|carriage|postage|freight|(?>versand\w*)|lieferung|lieferkosten|zustellung|porto\b|(?>fracht\w*)|livraison|port\b|exp[e\u00E9]dition"
        + @"|(?>verzend\w*)|levering|(?>bezorg\w*)|consegna|spedizione|env[i\u00ED]o)";

    private const string Free = @"\b(?:free|frei|kostenlos|kostenfrei|versandkostenfrei|portofrei|gratis|gratuite?|offerte?|franco|franko|vrij)\b";

    private const string From = @"(?:\b(?:from|over|above|ab|\u00FCber|ueber|[a\u00E0]\s+partir\s+de|d[e\u00E8]s|vanaf|boven|desde|da|oltre)\b|>=|\u2265|>)";

    private const string UpTo = @"(?:\b(?:up\s+to|bis(?:\s+zu)?|jusqu['\u2019][a\u00E0]|tot|hasta|fino\s+a)\b|<=|\u2264)";

    private const string Tax = @"\b(?:tax|taxes|vat|gst|mwst|ust|umsatzsteuer|mehrwertsteuer|steuer|tva|btw|iva|moms)\b";

    // What may stand between a word and its number: neither the end of a sentence nor another term.
    private const string Gap = @"(?:(?!(?<!\bFr)\.\s|minim|mindest|\btax|\bvat|mwst|\bust\b|\btva|valid|g\u00FCltig)[^\d;%]){0,40}?";

    [GeneratedRegex(Free + @"[^\d;]{0,25}?" + From + @"[^\d;%]{0,30}?(?<amount>" + Number + ")" + NoAmount + "|" + From + @"[^\d;%]{0,30}?(?<amount>" + Number + ")" + NoAmount + @"[^\d;%]{0,25}?" + Free, Manner)]
    public static partial Regex FreeFrom();

    [GeneratedRegex(Delivery + @"|\b(?:frei\s+haus|versandkostenfrei|portofrei|franco|franko)\b", Manner)]
    public static partial Regex AboutDelivery();

    [GeneratedRegex("(?:" + Delivery + @"|\b(?:otherwise|else|sonst|darunter|sinon)\b)" + Gap + "(?<amount>" + Number + ")" + NoAmount, Manner)]
    public static partial Regex DeliveryPrice();

    [GeneratedRegex(UpTo + @"\s*(?<mass>" + Number + @")\s*(?<unit>kg|g|lb|oz)\b[^\d;%]{0,15}?(?<amount>" + Number + ")" + NoAmount, Manner)]
    public static partial Regex DeliveryStep();

    [GeneratedRegex("(?<amount>" + Number + @")\s*%[^\d%;]{0,25}?" + Tax + "|" + Tax + @"[^\d%;]{0,15}?(?<amount>" + Number + @")\s*%", Manner)]
    public static partial Regex TaxRate();

    [GeneratedRegex(@"\b(?:not\s+included|nicht\s+(?:enthalten|inbegriffen)|non\s+(?:comprise?s?|incluse?s?)|niet\s+inbegrepen|no\s+incluid[oa]s?)\b", Manner)]
    public static partial Regex TaxNotInside();

    [GeneratedRegex(
        @"(?<inside>\b(?:incl\w*|inkl\w*|with|mit|ttc|brutto|gross|enthalten|inbegriffen|compris\w*|inbegrepen)\b)"
        + @"|\b(?:without|excl\w*|exkl\w*|plus|net|netto|zzgl|zuz\w*|ohne|hors|ht|zonder|sin|m[a\u00E1]s|senza|esclus\w*|before)\b|\+",
        Manner)]
    public static partial Regex TaxPlace();

    [GeneratedRegex(
        @"\b(?:minimum\s+(?:order|goods|de\s+commande)(?:\s+value)?|order\s+minimum|min\.?\s+order|smallest\s+order|mindest(?:bestell|auftrags?|waren)\w*|commande\s+minim\w+|minimale?\s+(?:order|bestelling)\w*"
        + @"|ordine\s+minimo|pedido\s+m[i\u00ED]nimo)\b" + @"[^\d;%]{0,25}?(?<amount>" + Number + ")" + NoAmount,
        Manner)]
    public static partial Regex Minimum();

    [GeneratedRegex(@"\b(?:set-?\s?up|handling\s+(?:fee|charge)|order\s+fee|grundpreis|grundgeb\u00FChr|einrichtung\w*|r\u00FCstkosten|bearbeitungsgeb\u00FChr|frais\s+(?:fixes|de\s+calage|de\s+dossier))\b[^\d;%]{0,30}?(?<amount>" + Number + ")" + NoAmount, Manner)]
    public static partial Regex SetUp();

    [GeneratedRegex(
        From + @"[^\d;%]{0,25}?(?<amount>" + Number + ")" + NoAmount + @"[^\d;%]{0,20}?(?<rate>" + Number + @")\s*%[^\d;%]{0,3}?" + Off
        + "|(?<rate>" + Number + @")\s*%[^\d;%]{0,3}?" + Off + @"[^\d;%]{0,20}?" + From + @"[^\d;%]{0,25}?(?<amount>" + Number + ")" + NoAmount,
        Manner)]
    public static partial Regex Discount();

    private const string Off = @"\b(?:off|discount|rabatt|nachlass|remise|korting|sconto|descuento)\b";

    [GeneratedRegex(
        @"\b(?:from|as\s+of|since|effective|ab|vom|seit|stand|[a\u00E0]\s+partir\s+du|[a\u00E0]\s+compter\s+du|d[e\u00E8]s|depuis|vanaf|dal|desde)\b:?\s*(?:the|dem|den|le|du|el)?\s*"
        + @"(?<day>\d{4}-\d{2}-\d{2}|\d{1,2}\s?[./-]\s?\d{1,2}\s?[./-]\s?\d{2,4}|\d{1,2}(?:\.|er|st|nd|rd|th)?\s+(?:de\s+)?\p{L}{3,10}\.?\s+(?:de\s+)?\d{4}|\p{L}{3,10}\s+\d{1,2}(?:st|nd|rd|th)?,?\s+\d{4})",
        Manner)]
    public static partial Regex Day();

    [GeneratedRegex(@"\b(?:valid|effective|in\s+force|price\w*|preis\w*|g\u00FCltig|stand|tari\w*|prix|valable\w*|geldig|prezz\w*|precio\w*|list\w*|liste)\b", Manner)]
    public static partial Regex AboutPrices();
}
