using Microsoft.Extensions.Options;
using PressRun.Data.People;
using PressRun.Data.Running;

namespace PressRun.Web.People;

/// <summary>Writes a code for a new password into the log, for the address that whoever runs the server names: the way back in for an owner whom
/// nobody else can make one.</summary>
public sealed class HostsCode(IServiceScopeFactory scopes, PasswordCodeStore codes, IOptions<PressRunOptions> options)
{
    /// <summary>Writes it, where an address is named.</summary>
    /// <param name="address">Where the app answers.</param>
    public async Task PrintAsync(string address)
    {
        if (options.Value.NewPasswordFor.Trim() is not { Length: > 0 } email)
        {
            return;
        }

        await using var scope = scopes.CreateAsyncScope();
        var known = scope.ServiceProvider.GetRequiredService<Accounts>().Known(email);
        Console.WriteLine(known is not null && await codes.MakeForHostAsync(known) is { } code
            ? $"{Refusals.Masked(email)} sets a new password at {address.TrimEnd('/')}/new-password with this code, which holds once and for 24 hours: {code}\nTake PressRun__NewPasswordFor out again, or each start makes another."
            : $"PressRun__NewPasswordFor names {Refusals.Masked(email)}, and nobody has an account with this address.");
    }
}
