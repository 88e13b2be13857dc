using System.Text.Json;
using PressRun.Data.Archive;
using PressRun.Data.Conversions;
using PressRun.Engine.Quoting;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Payouts;

/// <summary>Who is promised what, as it is kept and archived: a name, and one of <c>perCopy</c>, <c>ofReceipts</c>, <c>ofPrice</c> and <c>ofProfit</c>.</summary>
internal static class ClaimShape
{
    /// <summary>What a claim is.</summary>
    public const string Rule = "Write who gets what as { \"name\" } with one of \"perCopy\" (an amount), \"ofReceipts\", \"ofPrice\" (fractions) and \"ofProfit\" (shares).";

    private const string Member = "claims";

    private static readonly NumberRule Rate = new("Write a fraction from 0 to 1.", 0m, 1m);
    private static readonly NumberRule Weight = new("Write a share above 0, at most 1,000,000.", 0m, BillSplit.MostShares, WithoutLeast: true);

    public static string Text(IReadOnlyList<Claim> claims) => Contract.Text(json => WriteList(json, claims));

    public static IReadOnlyList<Claim> Read(string text) => Contract.Read<IReadOnlyList<Claim>>(text, (element, path, problems) =>
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var claims = ReadList(block);
        block.Close();
        return claims;
    });

    public static void WriteList(Utf8JsonWriter json, IReadOnlyList<Claim> claims)
    {
        json.WriteStartArray(Member);
        foreach (var claim in claims)
        {
            json.WriteStartObject();
            json.WriteString("name", claim.Name);
            var (member, value) = claim switch
            {
                Claim.PerCopy each => ("perCopy", each.Amount),
                Claim.OfReceipts part => ("ofReceipts", part.Rate),
                Claim.OfPrice part => ("ofPrice", part.Rate),
                Claim.OfProfit share => ("ofProfit", share.Weight),
                _ => throw new ArgumentOutOfRangeException(nameof(claims), claim, "There is no such claim."),
            };
            json.WriteNumber(member, value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The claims of a block that has them; none where it has none.</summary>
    public static IReadOnlyList<Claim> ReadList(JsonBlock block)
    {
        var claims = block.List(Member, Need.May, Rule, (item, at) => ReadOne(item, at, block.Problems), Claim.Most);
        foreach (var problem in Claim.Check(claims))
        {
            block.Problems.Add(block.Path.Member(Member), problem.Value, problem.Rule);
        }

        return claims;
    }

    private static Claim? ReadOne(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var name = block.Text("name", Need.Must, ArchiveWords.Name) ?? "";
        Claim?[] found =
        [
            block.Number("perCopy", JobRules.Amount) is { } amount ? new Claim.PerCopy(name, amount) : null,
            block.Number("ofReceipts", Rate) is { } receipts ? new Claim.OfReceipts(name, receipts) : null,
            block.Number("ofPrice", Rate) is { } price ? new Claim.OfPrice(name, price) : null,
            block.Number("ofProfit", Weight) is { } weight ? new Claim.OfProfit(name, weight) : null,
        ];
        if (found.Count(claim => claim is not null) != 1)
        {
            problems.Add(path, name, Rule);
        }

        block.Close();
        return found.FirstOrDefault(claim => claim is not null);
    }
}
