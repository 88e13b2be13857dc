using System.Globalization;
using PressRun.Data.RunPlans;

namespace PressRun.Web.Papers;

/// <summary>What a plan is called that the program makes from another.</summary>
public static class CalledPlan
{
    private const int Longest = 120;
    private const string Parting = ", ";

    /// <summary>The shop, or the other plan's own name, and what is new of it. What the program once put behind the shop's name goes, as it says what is no longer so.</summary>
    /// <param name="source">The other plan.</param>
    /// <param name="how">What is new, in words.</param>
    /// <param name="taken">Names of the printing's plans: where the name is among them it is numbered.</param>
    public static string Of(JobSource source, string how, IEnumerable<string> taken)
    {
        var (own, shop) = (source.Plan.Name, source.PriceList.Name);
        var whole = $"{(own.StartsWith(shop + Parting, StringComparison.Ordinal) ? shop : own)}{Parting}{how}";
        var others = taken.ToHashSet(StringComparer.Ordinal);
        return Numbered(whole, others);
    }

    /// <summary>The plan's name once it goes to another shop: what the program put there follows the shop, and what somebody typed stays.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="was">The shop that it was at.</param>
    /// <param name="now">The shop that it goes to.</param>
    /// <param name="taken">Names of the printing's other plans: where the shop's own name is among them, the plan is called another way of it.</param>
    public static string AtShop(string name, string was, string now, IEnumerable<string> taken)
    {
        var others = taken.ToHashSet(StringComparer.Ordinal);
        return name == was || (name.StartsWith(was + Parting, StringComparison.Ordinal) && name[(was + Parting).Length..].Split(Parting).All(rest => rest == Say($"another way")))
            ? others.Contains(now) ? Numbered($"{now}{Parting}{Say($"another way")}", others) : Numbered(now, others)
            : name;
    }

    private static string Numbered(string whole, HashSet<string> others) =>
        Enumerable.Range(1, others.Count + 1).Select(number => Within(whole, number)).First(name => !others.Contains(name));

    private static string Within(string whole, int number)
    {
        var end = number == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({number})");
        return (whole.Length + end.Length <= Longest ? whole : whole[..(Longest - end.Length - 1)].TrimEnd() + "…") + end;
    }
}
