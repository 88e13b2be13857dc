using System.Globalization;
using Microsoft.Extensions.Options;

namespace PressRun.Web.Api;

/// <summary>How much work the HTTP interface takes on, so that one caller's long ladder does not keep the pages waiting.</summary>
public sealed class ApiLimits
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "PressRun:Api";

    /// <summary>Short jobs, of milliseconds, worked out at the same time; one fewer than the processors where nothing is named, and at least
    /// one.</summary>
    /// <value>1 to 1,000.</value>
    public int MostAtOnce { get; set; } = Math.Max(1, Environment.ProcessorCount - 1);

    /// <summary>Long jobs, such as ladders of many quantities, worked out at the same time beside the short ones; half the processors where
    /// nothing is named, and at least one.</summary>
    /// <value>1 to 1,000.</value>
    public int MostLongAtOnce { get; set; } = Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>Jobs of either kind that wait for their turn; further ones are turned away with status 503.</summary>
    /// <value>0 to 10,000.</value>
    public int MostWaiting { get; set; } = 64;

    /// <summary>Longest time, in seconds, that a job may wait and be worked on.</summary>
    /// <value>1 to 600.</value>
    public int LongestSeconds { get; set; } = 20;
}

/// <summary>Refuses limits that are none, by the names under which they are set.</summary>
internal sealed class ApiLimitsCheck : IValidateOptions<ApiLimits>
{
    private static readonly (string Name, Func<ApiLimits, int> Of, int Least, int Most)[] Ranges =
    [
        (nameof(ApiLimits.MostAtOnce), limits => limits.MostAtOnce, 1, 1_000),
        (nameof(ApiLimits.MostLongAtOnce), limits => limits.MostLongAtOnce, 1, 1_000),
        (nameof(ApiLimits.MostWaiting), limits => limits.MostWaiting, 0, 10_000),
        (nameof(ApiLimits.LongestSeconds), limits => limits.LongestSeconds, 1, 600),
    ];

    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, ApiLimits options)
    {
        var wrong = Ranges.Where(range => range.Of(options) < range.Least || range.Of(options) > range.Most).Select(range => string.Create(
            CultureInfo.InvariantCulture, $"PressRun__Api__{range.Name} is {range.Of(options)}; write a whole number from {range.Least} to {range.Most:N0}.")).ToList();
        return wrong.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(wrong);
    }
}
