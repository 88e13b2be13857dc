using System.Security.Cryptography;
using PressRun.Data.People;

namespace PressRun.Web.People;

/// <summary>The code that makes whoever can read the server's log its first owner. Only its hash is held, in this process: it ends with it, or
/// after a day.</summary>
public sealed class OwnerCode(IServiceScopeFactory scopes, TimeProvider time)
{
    private static readonly TimeSpan Holds = TimeSpan.FromHours(24);

    private byte[]? hash;
    private DateTimeOffset until;

    /// <summary>Prints a code where nobody has an account yet.</summary>
    /// <param name="address">Where the app answers.</param>
    public async Task PrintAsync(string address)
    {
        await using var scope = scopes.CreateAsyncScope();
        if (await scope.ServiceProvider.GetRequiredService<Accounts>().AnyAsync())
        {
            return;
        }

        var code = Secret.NewToType();
        (hash, until) = (Secret.Hash(code), time.GetUtcNow() + Holds);
        Console.WriteLine($"Nobody has an account here yet. Open {address.TrimEnd('/')}/first-owner and give this code, which holds for 24 hours or until the next start: {code}");
    }

    /// <summary>True for the code, while it holds.</summary>
    public bool Is(string typed) =>
        hash is { } held && time.GetUtcNow() < until && CryptographicOperations.FixedTimeEquals(held, Secret.HashTyped(typed));

    /// <summary>Ends the code.</summary>
    public void End() => hash = null;
}
