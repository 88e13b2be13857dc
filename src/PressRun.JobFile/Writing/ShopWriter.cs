using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.JobFile.Writing;

/// <summary>Writes a shop's price list.</summary>
public static class ShopWriter
{
    /// <summary>Writes all members of a price list but the shop's name into an open object.</summary>
    public static void WritePriceListMembers(Utf8JsonWriter json, Shop shop, Currency currency)
    {
        json.Day("validFrom", shop.ValidFrom);
        WritePrices(json, shop, currency);
        WriteBookPrices(json, shop.BookPrices, currency);
        if (shop.Quantities.Count > 0)
        {
            json.WriteStartArray("quantities");
            foreach (var quantity in shop.Quantities)
            {
                json.WriteNumberValue(quantity);
            }

            json.WriteEndArray();
        }

        json.WriteStartObject("setup");
        json.Amount("order", shop.SetUp.Order, currency);
        json.Amount("edition", shop.SetUp.Edition, currency);
        json.Amount("part", shop.SetUp.Part, currency);
        json.WriteEndObject();
        json.List("finishing", shop.Finishing, (writer, finishing) =>
        {
            writer.WriteString("name", finishing.Name);
            writer.Word("per", JobWords.FinishingUnits, finishing.Per);
            writer.Amount("each", finishing.Each, currency);
            writer.Amount("minimum", finishing.Minimum, currency);
        });
        json.Word("collates", JobWords.Collating, shop.Collates);
        json.Word("layout", JobWords.Layouts, shop.Layout);
        json.Number("spoilage", shop.Spoilage);
        if (shop.Delivers is { } delivers)
        {
            json.Word("delivers", JobWords.Delivered, delivers);
        }

        WriteOrder(json, shop.Order, currency);
    }

    // Without whole-book prices these three are required, and so written even where they are empty.
    private static void WritePrices(Utf8JsonWriter json, Shop shop, Currency currency)
    {
        var required = shop.BookPrices.Count == 0;
        if (required || shop.Sheets.Count > 0)
        {
            json.WriteStartObject("sheets");
            foreach (var sheet in shop.Sheets)
            {
                json.WriteStartObject(sheet.Id);
                WriteSheet(json, sheet);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        WritePriceList(json, "print", shop.Print, required, (writer, price) =>
        {
            writer.Word("ink", JobWords.PrintedInks, price.Ink);
            writer.WriteString("sheet", price.SheetId);
            WriteSteps(writer, price.Steps, currency);
            writer.Word("rule", JobWords.StepRules, price.Rule);
        });
        WritePriceList(json, "paper", shop.Paper, required, (writer, price) =>
        {
            writer.WriteString("stock", price.StockId);
            writer.WriteString("sheet", price.SheetId);
            WriteSteps(writer, price.Steps, currency);
            writer.Word("rule", JobWords.StepRules, price.Rule);
        });
    }

    private static void WritePriceList<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> prices, bool required, Action<Utf8JsonWriter, T> write)
    {
        if (required && prices.Count == 0)
        {
            json.WriteStartArray(name);
            json.WriteEndArray();
        }

        json.List(name, prices, write);
    }

    private static void WriteSheet(Utf8JsonWriter json, Sheet sheet)
    {
        json.Length("width", sheet.Width);
        json.Length("height", sheet.Height);
        json.Length("margin", sheet.Margin);
        json.Length("gutter", sheet.Gutter);
        json.WriteBoolean("mixedLayout", sheet.MixedLayout);
        json.Word("grain", JobWords.Grains, sheet.Grain);
    }

    private static void WriteSteps(Utf8JsonWriter json, IReadOnlyList<PriceStep> steps, Currency currency) =>
        json.List("steps", steps, (writer, step) =>
        {
            writer.WriteNumber("from", step.From);
            writer.Amount("each", step.Each, currency);
        });

    private static void WriteBookPrices(Utf8JsonWriter json, IReadOnlyList<BookPrice> prices, Currency currency) =>
        json.List("bookPrices", prices, (writer, price) =>
        {
            writer.Word("binding", JobWords.Bindings, price.Binding);
            writer.WriteNumber("pagesFrom", price.PagesFrom);
            writer.WriteNumber("pagesTo", price.PagesTo);
            if (price.StockIds is { } ids)
            {
                writer.WriteStartArray("stocks");
                foreach (var id in ids)
                {
                    writer.WriteStringValue(id);
                }

                writer.WriteEndArray();
            }

            writer.List("steps", price.Steps, (inner, step) =>
            {
                inner.WriteNumber("from", step.From);
                inner.Amount("each", step.Each, currency);
                inner.Amount("perPage", step.PerPage, currency);
            });
        });

    private static void WriteOrder(Utf8JsonWriter json, OrderRules order, Currency currency)
    {
        json.WriteStartObject("order");
        json.Amount("minimum", order.Minimum, currency);
        json.List("discounts", order.Discounts, (writer, discount) =>
        {
            writer.Amount("from", discount.From, currency);
            writer.Number("rate", discount.Rate);
        });
        if (order.Delivery is { } delivery)
        {
            json.WriteStartObject("delivery");
            MailWriter.WriteSteps(json, delivery.Steps, currency);
            json.Amount("perFurtherKg", delivery.PerFurtherKilogram, currency);
            json.Amount("freeFrom", delivery.FreeFrom, currency);
            json.WriteEndObject();
        }

        if (order.Carton is { } carton)
        {
            json.WriteStartObject("carton");
            json.Mass("capacity", carton.Capacity);
            json.Mass("tare", carton.Tare);
            json.WriteEndObject();
        }

        json.Number("taxRate", order.TaxRate);
        json.WriteBoolean("taxOnDelivery", order.TaxOnDelivery);
        json.WriteNumber("leadDays", order.LeadDays);
        json.WriteEndObject();
    }
}
