namespace PressRun.Web.Running;

/// <summary>
/// Keeps addresses out of the log, because that of a share link or an invitation is its secret. The framework's log of requests, whose scope would
/// put the address beside every other line too, is off, and so are what it says of answers of the other server that people sign in by, which whoever comes back may write, and of
/// tokens of forms that it cannot read, a trace for each and for anybody who sends one: a form with such a token is refused anyway;
/// of the rest of the framework only warnings and worse are written. No setting changes that.
/// </summary>
public static class QuietLogs
{
    private const string Framework = "Microsoft.AspNetCore";
    private const string Requests = "Microsoft.AspNetCore.Hosting.Diagnostics";
    private const string Answers = "Microsoft.AspNetCore.Authentication.OpenIdConnect";
    private const string Tokens = "Microsoft.AspNetCore.Antiforgery";

    // By which the host may name what is off, with a star in the place of the rest.
    private static readonly string[] PartsOfOff = ["Hosting.Diagnostics", "OpenIdConnect", "Antiforgery"];

    /// <summary>Holds the rules, whatever the configuration says, now and when it is read again.</summary>
    public static void KeepAddressesOutOfLogs(this IServiceCollection services) => services.PostConfigure<LoggerFilterOptions>(Apply);

    // The longest category wins, without regard to case, and rules for one provider win over rules for all; of equals the last.
    private static void Apply(LoggerFilterOptions options)
    {
        foreach (var rule in options.Rules.Where(MayTell).ToList())
        {
            options.Rules.Remove(rule);
            if (!IsOff(rule.CategoryName!))
            {
                options.Rules.Add(new LoggerFilterRule(rule.ProviderName, rule.CategoryName, LogLevel.Warning, rule.Filter));
            }
        }

        foreach (var provider in options.Rules.Select(rule => rule.ProviderName).Append(null).Distinct().ToList())
        {
            options.Rules.Add(new LoggerFilterRule(provider, Framework, LogLevel.Warning, null));
            options.Rules.Add(new LoggerFilterRule(provider, Requests, LogLevel.None, null));
            options.Rules.Add(new LoggerFilterRule(provider, Answers, LogLevel.None, null));
            options.Rules.Add(new LoggerFilterRule(provider, Tokens, LogLevel.None, null));
        }
    }

    private static bool MayTell(LoggerFilterRule rule) => rule.CategoryName is { } category
        && (IsOff(category)
            || ((category.StartsWith(Framework, StringComparison.OrdinalIgnoreCase) || category.Contains('*', StringComparison.Ordinal)) && !(rule.LogLevel >= LogLevel.Warning)));

    private static bool IsOff(string category) => PartsOfOff.Any(part => category.Contains(part, StringComparison.OrdinalIgnoreCase));
}
