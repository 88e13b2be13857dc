using System.Net.Sockets;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Options;
using PressRun.Data.Running;

namespace PressRun.Web.Running;

/// <summary>Says in a sentence why PressRun does not start, also where the framework tells it by an exception of its own.</summary>
public static partial class StartFaults
{
    private const string Name = "name another address in ASPNETCORE_URLS.";

    // Parts of the framework that refuse what the host has set, in words that are fit to be read.
    private static readonly string[] ReadSettings = ["Microsoft.Extensions.Configuration", "Microsoft.Extensions.Logging", "Microsoft.AspNetCore.Server.Kestrel"];

    /// <summary>The sentence; null for what is a defect, of which the whole is to be told.</summary>
    public static string? Sentence(Exception fault) => fault switch
    {
        StartRefusedException => fault.Message,
        IOException { InnerException: AddressInUseException } => $"{fault.Message} Stop what listens there, or {Name}",
        SocketException { SocketErrorCode: SocketError.AccessDenied } => $"PressRun may not listen where ASPNETCORE_URLS says: ports below 1024 are root's. Let a proxy serve those, and {Name}",
        SocketException { SocketErrorCode: SocketError.AddressNotAvailable } => $"ASPNETCORE_URLS names an address that this machine does not have; {Name}",
        OptionsValidationException settings => "A setting cannot be used. " + string.Join(' ', settings.Failures),
        InvalidOperationException when Unreadable().Match(fault.Message) is { Success: true } told =>
            $"{told.Groups["name"].Value.Replace(":", "__", StringComparison.Ordinal)} is {told.Groups["value"].Value}; write {(told.Groups["type"].Value == "Boolean" ? "true or false" : "a whole number")}.",
        InvalidOperationException or InvalidDataException or UnauthorizedAccessException when ReadSettings.Any(part => fault.Source?.StartsWith(part, StringComparison.Ordinal) == true) =>
            "A setting cannot be used. " + fault.Message + (fault.InnerException is { } cause ? " " + cause.Message : ""),
        _ when DatabaseAway.IsWhy(fault) => "The database stopped answering while PressRun started. Start it again when it does.",
        _ => null,
    };

    // The framework's words for a value that is none of the kind.
    [GeneratedRegex(@"^Failed to convert configuration value '(?<value>.*)' at '(?<name>[^']+)' to type 'System\.(?<type>Int32|Boolean)'", RegexOptions.Singleline)]
    private static partial Regex Unreadable();
}
