using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.People;

/// <summary>
/// What a password must be: long, and not one that is tried first (NIST SP 800-63B-4, from memory: at least 15 characters where
/// nothing else is asked for, compared with a list of common ones and with words of its place and person, no rules on its composition).
/// </summary>
public sealed class PasswordRules(PressRunDbContext db) : IPasswordValidator<User>
{
    /// <summary>Fewest characters.</summary>
    public const int Fewest = 15;

    /// <summary>Most characters.</summary>
    public const int Most = 128;

    // A password of fewer different characters is a run of keys, not a secret.
    private const int FewestDifferent = 5;

    // At most four signs are put together to one, so that a longer text is too long in its normal form too. To find that takes time by the square of its length.
    private const int MostTyped = Most * 4;

    /// <summary>The same characters however a keyboard put them together (NFKC, one of the forms that NIST SP 800-63B names; from memory). A text that is too long to be a
    /// password stays as it is.</summary>
    public static string Normal(string password)
    {
        ArgumentNullException.ThrowIfNull(password);
        if (password.Length > MostTyped)
        {
            return password;
        }

        try
        {
            return password.Normalize(NormalizationForm.FormKC);
        }
        catch (ArgumentException)
        {
            // Half a character of two parts is no text; nobody types it, so nothing needs to equal it.
            return password;
        }
    }

    /// <summary>What stands in a password's way, in a sentence; null where nothing does.</summary>
    /// <param name="password">As typed.</param>
    /// <param name="known">What is known of its owner: name, address, presses.</param>
    public static string? Problem(string password, params IEnumerable<string> known)
    {
        var plain = Normal(password);
        if (plain.Length > Most)
        {
            return $"A password has at most {Most} characters.";
        }

        var length = new StringInfo(plain).LengthInTextElements;
        if (length < Fewest)
        {
            return $"A password has at least {Fewest} characters; this one has {length}. Four or five words that do not belong together are easy to remember.";
        }

        if (CommonPasswords.Contain(plain) || IsARun(plain))
        {
            return "Many people have had this password, so it is tried first. Take other words.";
        }

        var (lower, words) = (plain.ToLowerInvariant(), known.SelectMany(Words).Append("pressrun").ToHashSet(StringComparer.Ordinal));
        return words.Any(word => lower.Replace(word, "", StringComparison.Ordinal).Length < Fewest / 2) ? "This is hardly more than a name or an address that others know. Take other words."
            : FewWords.Make(plain, words) ? "This is hardly more than a word or two that are tried first. Take four or five words that do not belong together."
            : null;
    }

    /// <inheritdoc/>
    public async Task<IdentityResult> ValidateAsync(UserManager<User> manager, User user, string? password)
    {
        ArgumentNullException.ThrowIfNull(user);
        var presses = await db.Memberships.IgnoreQueryFilters().Where(member => member.UserId == user.Id)
            .Join(db.Presses, member => member.PressId, press => press.Id, (_, press) => press.Name).ToListAsync();
        return Problem(password ?? "", [user.Name, user.Email ?? "", .. presses]) is { } problem
            ? IdentityResult.Failed(new IdentityError { Code = "Password", Description = problem })
            : IdentityResult.Success;
    }

    // The same few characters again and again, or keys in the order of the alphabet or of the numbers.
    private static bool IsARun(string text)
    {
        var lower = text.ToLowerInvariant();
        return lower.Distinct().Count() < FewestDifferent
            || Enumerable.Range(1, lower.Length / 2).Any(unit => Enumerable.Range(unit, lower.Length - unit).All(at => lower[at] == lower[at - unit]))
            || Enumerable.Range(1, lower.Length - 1).Count(at => Math.Abs(lower[at] - lower[at - 1]) <= 1) > lower.Length * 3 / 4;
    }

    private static IEnumerable<string> Words(string known) =>
        known.ToLowerInvariant().Split([' ', '@', '.'], StringSplitOptions.RemoveEmptyEntries).Append(known.ToLowerInvariant()).Where(word => word.Length > 3);
}

/// <summary>Hashes passwords in their normal form, so that the same keys open on every machine.</summary>
internal sealed class NormalPasswordHasher(Microsoft.Extensions.Options.IOptions<PasswordHasherOptions> options) : PasswordHasher<User>(options)
{
    /// <summary>Rounds of PBKDF2 with SHA-512; the number that the OWASP password storage cheat sheet gives for it (from memory).</summary>
    public const int Rounds = 210_000;

    public override string HashPassword(User user, string password) => base.HashPassword(user, PasswordRules.Normal(password));

    public override PasswordVerificationResult VerifyHashedPassword(User user, string hashedPassword, string providedPassword) =>
        base.VerifyHashedPassword(user, hashedPassword, PasswordRules.Normal(providedPassword));
}
