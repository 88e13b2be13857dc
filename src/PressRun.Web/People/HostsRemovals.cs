using Microsoft.Extensions.Options;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Running;

namespace PressRun.Web.People;

/// <summary>Deletes, at the start, the account and the press that whoever runs the server names, and says what became of it. A press is deleted by its id only, which its
/// name shows first: a name may stand for several, and a setting is easily left standing.</summary>
public sealed class HostsRemovals(IServiceScopeFactory scopes, AccountRemoval accounts, PressRemoval presses, IOptions<PressRunOptions> options)
{
    /// <summary>Deletes them, where one is named.</summary>
    public async Task DeleteAsync()
    {
        if (options.Value.DeletePress.Trim() is { Length: > 0 } press)
        {
            await DeletePressAsync(press);
        }

        if (options.Value.DeleteAccount.Trim() is { Length: > 0 } email)
        {
            await using var scope = scopes.CreateAsyncScope();
            var known = scope.ServiceProvider.GetRequiredService<Accounts>().Known(email);
            var address = Refusals.Masked(email);
            Console.WriteLine((known is null ? null : await accounts.DeleteForHostAsync(known)) switch
            {
                null => $"PressRun__DeleteAccount names {address}, and nobody has an account with this address. Take the setting out again.",
                { Count: 0 } => $"The account of {address} is deleted. Take PressRun__DeleteAccount out again.",
                var held => $"The account of {address} was not deleted: it is the last owner of {string.Join(", ", held)}, to which others belong. Make one of them an owner first, or delete the press.",
            });
        }
    }

    private async Task DeletePressAsync(string nameOrId)
    {
        var found = await presses.FindAsync(nameOrId);
        if (found.Count == 0)
        {
            Console.WriteLine($"PressRun__DeletePress names {nameOrId}, and no press has this name or id. Take the setting out again.");
        }

        foreach (var (id, name, titles) in found)
        {
            if (id.ToString() == nameOrId)
            {
                await presses.DeleteAsync(id);
                Console.WriteLine($"The press {name} is deleted, with everything in it. Take PressRun__DeletePress out again.");
            }
            else
            {
                Console.WriteLine($"The press {name} has {titles} titles. To delete it with everything in it, make a backup and start once with PressRun__DeletePress={id}");
            }
        }
    }
}
