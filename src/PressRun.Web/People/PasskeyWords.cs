namespace PressRun.Web.People;

/// <summary>Words of the script that asks the browser for a passkey (<c>js/passkeys.js</c>).</summary>
public static class PasskeyWords
{
    /// <summary>All that it says by itself; what the server says comes with its answer.</summary>
    public static Dictionary<string, object> OfScript() => new(StringComparer.Ordinal)
    {
        ["noneChosen"] = Say($"No passkey was chosen. Try again when you are ready."),
        ["hasOne"] = Say($"This device has a passkey of yours for this address already."),
        ["tooOld"] = Say($"This page is too old to ask. Load it anew."),
        ["noLine"] = Say($"There is no line to the server. Try again."),
    };
}
