using PressRun.Data.Running;

namespace PressRun.Web.Running;

/// <summary>Lets any setting come from a file: <c>PressRun__DatabasePassword_FILE=/run/secrets/x</c> sets <c>PressRun__DatabasePassword</c> to what
/// the file holds, so that a secret stands neither in a command nor in the environment.</summary>
internal static class SecretFiles
{
    private const string Suffix = "_FILE";

    public static void AddTo(IConfigurationManager configuration)
    {
        var named = configuration.AsEnumerable()
            .Where(setting => setting.Key.EndsWith(Suffix, StringComparison.Ordinal) && !string.IsNullOrEmpty(setting.Value) && IsOurs(setting.Key))
            .ToDictionary(setting => setting.Key[..^Suffix.Length], setting => (string?)Read(setting.Key, setting.Value!));
        if (named.Keys.FirstOrDefault(key => !string.IsNullOrEmpty(configuration[key])) is { } both)
        {
            throw new StartRefusedException($"{Variable(both)} and {Variable(both)}{Suffix} are both set, and nobody can tell which is meant. Leave one of them out.");
        }

        if (named.Count > 0)
        {
            configuration.AddInMemoryCollection(named);
        }
    }

    private static string Variable(string key) => key.Replace(":", "__", StringComparison.Ordinal);

    private static bool IsOurs(string key) =>
        key.StartsWith(PressRunOptions.Section + ":", StringComparison.OrdinalIgnoreCase) || key.StartsWith("ConnectionStrings:", StringComparison.OrdinalIgnoreCase);

    private static string Read(string key, string path)
    {
        try
        {
            return File.ReadAllText(path).TrimEnd('\r', '\n');
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StartRefusedException($"{Variable(key)} names {path}, which cannot be read: {exception.Message}", exception);
        }
    }
}
