using System.Text.Json;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.JobFile.Writing;

/// <summary>Writes an edition.</summary>
public static class EditionWriter
{
    /// <summary>Writes the members page, binding, bleed, trim, parts, fold, weighed and fixedCosts into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Edition edition, Currency currency)
    {
        json.WriteStartObject("page");
        json.Length("width", edition.Page.Width);
        json.Length("height", edition.Page.Height);
        json.WriteEndObject();
        json.Word("binding", JobWords.Bindings, edition.Binding);
        json.WriteBoolean("bleed", edition.Bleed);
        json.WriteStartObject("trim");
        json.Length("head", edition.Trim.Head);
        json.Length("foot", edition.Trim.Foot);
        json.Length("foreEdge", edition.Trim.ForeEdge);
        json.Length("spine", edition.Trim.Spine);
        json.WriteEndObject();
        json.List("parts", edition.Parts, WritePart);
        json.Word("fold", JobWords.Folds, edition.Fold);
        if (edition.Weighed is { } weighed)
        {
            json.WriteStartObject("weighed");
            json.Mass("mass", weighed.Mass);
            json.Length("thickness", weighed.Thickness);
            json.WriteEndObject();
        }

        json.List("fixedCosts", edition.FixedCosts, (writer, cost) =>
        {
            writer.WriteString("name", cost.Name);
            writer.Amount("amount", cost.Amount, currency);
        });
    }

    private static void WritePart(Utf8JsonWriter json, Part part)
    {
        json.WriteString("name", part.Name);
        json.WriteNumber("pages", part.Pages);
        json.WriteString("stock", part.StockId);
        json.Word("outside", JobWords.Inks, part.Outside);
        json.Word("inside", JobWords.Inks, part.Inside);
        json.Text("sheet", part.SheetId);
    }
}
