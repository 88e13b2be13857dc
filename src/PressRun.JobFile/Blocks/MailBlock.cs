using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads mailers and postal services.</summary>
public static class MailBlock
{
    private const string MailerRule = "Write mailers as a list of { \"id\", \"name\", \"length\", \"width\", \"thickness\", \"mass\", \"price\" }.";
    private const string ServiceRule = "Write postage as a list of services with id, region, validFrom, limits and steps.";

    /// <summary>Reads the member <c>mailers</c> of a block; ids must differ.</summary>
    /// <param name="block">The block that holds it.</param>
    /// <param name="ids">The ids found.</param>
    /// <param name="most">Most mailers.</param>
    public static IReadOnlyList<Mailer> ReadMailers(JsonBlock block, out IReadOnlySet<string> ids, int most = int.MaxValue)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var mailers = block.List("mailers", Need.May, MailerRule, (element, path) =>
        {
            var mailer = ReadMailer(element, path, block.Problems);
            if (mailer is { Id.Length: > 0 })
            {
                Keys.CheckOnce(taken, mailer.Id, path.Member("id"), mailer.Id, "Another mailer has this id already; ids must differ.", block.Problems);
            }

            return mailer;
        }, most);
        ids = taken;
        return mailers;
    }

    /// <summary>Reads one mailer.</summary>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static Mailer? ReadMailer(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, MailerRule) is not { } block)
        {
            return null;
        }

        var id = block.Text("id", Need.Must, JobRules.Id) ?? string.Empty;
        var mailer = new Mailer(
            id,
            block.Text("name", Need.May, JobRules.Name) ?? id,
            block.Length("length", JobRules.MailerSide) ?? default,
            block.Length("width", JobRules.MailerSide) ?? default,
            block.Length("thickness", JobRules.MailerSide) ?? default,
            block.Mass("mass", JobRules.MassOrNone) ?? default,
            block.Number("price", JobRules.Amount) ?? 0m);
        block.Close();
        return mailer;
    }

    /// <summary>Reads the member <c>postage</c> of a block; one id may stand there several times with different dates.</summary>
    /// <param name="block">The block that holds it.</param>
    /// <param name="most">Most tables.</param>
    public static IReadOnlyList<PostageService> ReadServices(JsonBlock block, int most = int.MaxValue)
    {
        var taken = new HashSet<(string Id, DateOnly ValidFrom)>();
        return block.List("postage", Need.May, ServiceRule, (element, path) =>
        {
            var service = ReadService(element, path, block.Problems);
            if (service is { Id.Length: > 0 })
            {
                Keys.CheckOnce(
                    taken,
                    (service.Id, service.ValidFrom),
                    path.Member("id"),
                    service.Id,
                    "Another service has this id and the same validFrom; one of them must differ.",
                    block.Problems);
            }

            return service;
        }, most);
    }

    /// <summary>Reads one table of a service.</summary>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static PostageService? ReadService(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, ServiceRule) is not { } block)
        {
            return null;
        }

        var id = block.Text("id", Need.Must, JobRules.Id) ?? string.Empty;
        var service = new PostageService(
            id,
            block.Text("name", Need.May, JobRules.Name) ?? id,
            block.Text("region", Need.May, JobRules.Name) ?? string.Empty,
            block.Day("validFrom", Need.May) ?? DateOnly.MinValue,
            Limit("maxLength"),
            Limit("maxWidth"),
            Limit("maxThickness"),
            Limit("minLength"),
            Limit("minWidth"),
            Limit("minThickness"),
            Steps.ReadMasses(block, atLeastOne: true));
        block.Close();
        return service;

        Length? Limit(string name) => block.Length(name, JobRules.PostageLimit);
    }
}
