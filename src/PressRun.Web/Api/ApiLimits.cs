using System.ComponentModel.DataAnnotations;

namespace PressRun.Web.Api;

/// <summary>How much work the HTTP interface takes on, so that one caller's long ladder does not keep the pages waiting.</summary>
public sealed class ApiLimits
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "PressRun:Api";

    /// <summary>Short jobs, of milliseconds, worked out at the same time; one fewer than the processors where nothing is named, and at least
    /// one.</summary>
    /// <value>1 to 1,000.</value>
    [Range(1, 1000)]
    public int MostAtOnce { get; set; } = Math.Max(1, Environment.ProcessorCount - 1);

    /// <summary>Long jobs, such as ladders of many quantities, worked out at the same time beside the short ones; half the processors where
    /// nothing is named, and at least one.</summary>
    /// <value>1 to 1,000.</value>
    [Range(1, 1000)]
    public int MostLongAtOnce { get; set; } = Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>Jobs of either kind that wait for their turn; further ones are turned away with status 503.</summary>
    /// <value>0 to 10,000.</value>
    [Range(0, 10_000)]
    public int MostWaiting { get; set; } = 64;

    /// <summary>Longest time, in seconds, that a job may wait and be worked on.</summary>
    /// <value>1 to 600.</value>
    [Range(1, 600)]
    public int LongestSeconds { get; set; } = 20;
}
