using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;

namespace PressRun.JobFile.Writing;

/// <summary>Writes mailers and postal services.</summary>
public static class MailWriter
{
    /// <summary>Writes the members of a mailer into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Mailer mailer, Currency currency)
    {
        json.WriteString("id", mailer.Id);
        json.WriteString("name", mailer.Name);
        json.Length("length", mailer.Length);
        json.Length("width", mailer.Width);
        json.Length("thickness", mailer.Thickness);
        json.Mass("mass", mailer.Mass);
        json.Amount("price", mailer.Price, currency);
    }

    /// <summary>Writes the members of a service's table into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, PostageService service, Currency currency)
    {
        json.WriteString("id", service.Id);
        json.WriteString("name", service.Name);
        json.WriteString("region", service.Region);
        json.Day("validFrom", service.ValidFrom);
        json.Length("maxLength", service.MaxLength);
        json.Length("maxWidth", service.MaxWidth);
        json.Length("maxThickness", service.MaxThickness);
        json.Length("minLength", service.MinLength);
        json.Length("minWidth", service.MinWidth);
        json.Length("minThickness", service.MinThickness);
        WriteSteps(json, service.Steps, currency);
    }

    internal static void WriteSteps(Utf8JsonWriter json, IReadOnlyList<MassStep> steps, Currency currency) =>
        json.List("steps", steps, (writer, step) =>
        {
            writer.Mass("most", step.Most);
            writer.Amount("price", step.Price, currency);
        });
}
