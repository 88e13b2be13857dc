namespace PressRun.Web.Running;

/// <summary>
/// Keeps addresses out of the log, because that of a share link or an invitation is its secret. The framework's log of requests, whose scope would
/// put the address beside every other line too, is off; of the rest of the framework only warnings and worse are written. No setting changes that.
/// </summary>
public static class QuietLogs
{
    private const string Framework = "Microsoft.AspNetCore";
    private const string Requests = "Microsoft.AspNetCore.Hosting.Diagnostics";
    private const string LastPart = "Hosting.Diagnostics";

    /// <summary>Holds the rules, whatever the configuration says, now and when it is read again.</summary>
    public static void KeepAddressesOutOfLogs(this IServiceCollection services) => services.PostConfigure<LoggerFilterOptions>(Apply);

    // The longest category wins, without regard to case, and rules for one provider win over rules for all; of equals the last.
    private static void Apply(LoggerFilterOptions options)
    {
        foreach (var rule in options.Rules.Where(MayTell).ToList())
        {
            options.Rules.Remove(rule);
            if (!rule.CategoryName!.Contains(LastPart, StringComparison.OrdinalIgnoreCase))
            {
                options.Rules.Add(new LoggerFilterRule(rule.ProviderName, rule.CategoryName, LogLevel.Warning, rule.Filter));
            }
        }

        foreach (var provider in options.Rules.Select(rule => rule.ProviderName).Append(null).Distinct().ToList())
        {
            options.Rules.Add(new LoggerFilterRule(provider, Framework, LogLevel.Warning, null));
            options.Rules.Add(new LoggerFilterRule(provider, Requests, LogLevel.None, null));
        }
    }

    private static bool MayTell(LoggerFilterRule rule) => rule.CategoryName is { } category
        && (category.Contains(LastPart, StringComparison.OrdinalIgnoreCase)
            || ((category.StartsWith(Framework, StringComparison.OrdinalIgnoreCase) || category.Contains('*', StringComparison.Ordinal)) && !(rule.LogLevel >= LogLevel.Warning)));
}
