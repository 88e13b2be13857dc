using System.Buffers;
using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.JobFile.Writing;

namespace PressRun.JobFile;

/// <summary>Writes jobs as job files, in one form only: the same job is always the same bytes, and they read back as the same job.
/// Lengths are written in mm, masses in g, both exact; paper weights as they were stated.</summary>
public static class JobWriter
{
    /// <summary>The bytes of a job file (UTF-8).</summary>
    /// <param name="job">The job.</param>
    /// <param name="indented">True for people, false for machines.</param>
    public static byte[] Write(Job job, bool indented = true)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, JsonWriting.Options(indented)))
        {
            Write(json, job);
        }

        return bytes.WrittenSpan.ToArray();
    }

    /// <summary>Writes a job as one JSON object.</summary>
    public static void Write(Utf8JsonWriter json, Job job)
    {
        var currency = job.Currency;
        json.WriteStartObject();
        json.WriteString("schema", JobReader.Schema);
        json.Day("date", job.Date);
        json.WriteString("currency", currency.Code);
        json.WriteStartObject("edition");
        json.WriteString("title", job.Edition.Title);
        json.WriteNumber("printing", job.Edition.Printing);
        EditionWriter.WriteMembers(json, job.Edition, currency);
        json.WriteEndObject();
        json.WriteStartObject("stocks");
        foreach (var stock in job.Stocks)
        {
            json.WriteStartObject(stock.Id);
            StockWriter.WriteMembers(json, stock);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("shop");
        json.WriteString("name", job.Shop.Name);
        ShopWriter.WritePriceListMembers(json, job.Shop, currency);
        json.WriteEndObject();
        json.WriteStartObject("bench");
        BenchWriter.WriteMembers(json, job.Bench, currency);
        json.WriteEndObject();
        json.List("mailers", job.Mailers, (writer, mailer) => MailWriter.WriteMembers(writer, mailer, currency));
        json.List("postage", job.Postage, (writer, service) => MailWriter.WriteMembers(writer, service, currency));
        json.List("channels", job.Channels, (writer, channel) => ChannelWriter.WriteMembers(writer, channel, currency));
        json.WriteNumber("freeCopies", job.FreeCopies);
        json.WriteBoolean("reclaimTax", job.ReclaimTax);
        json.WriteNumber("quantity", job.Quantity);
        if (job.Ladder is { } ladder)
        {
            json.WriteStartObject("ladder");
            json.WriteNumber("from", ladder.From);
            json.WriteNumber("to", ladder.To);
            json.WriteNumber("step", ladder.Step);
            json.WriteEndObject();
        }

        if (job.SecondHalf is { } half)
        {
            RequestWriter.WriteHalves(json, job.Edition.Parts[half.Part].Name, half.StockId);
        }

        if (job.Compare is { } compare)
        {
            RequestWriter.WriteCompare(json, compare, job);
        }

        if (job.Reprint is { } reprint)
        {
            RequestWriter.WriteReprint(json, reprint, currency);
        }

        json.WriteEndObject();
    }
}
