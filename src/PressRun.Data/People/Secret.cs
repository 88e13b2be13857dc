using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace PressRun.Data.People;

/// <summary>Secrets that are shown once and kept as their hash: links that invite, keys for programs, the owner's code. They are drawn at
/// random and long, so that a plain hash keeps them: nobody can try them all.</summary>
public static class Secret
{
    /// <summary>Random bits of a secret.</summary>
    public const int Bits = 256;

    // No letter or digit that is read for another (Crockford's base 32).
    private const string Spoken = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    /// <summary>A new secret of <see cref="Bits"/> random bits, in letters that may stand in an address.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bits / 8));

    /// <summary>A new secret of 160 random bits to be typed by hand, in groups of four.</summary>
    public static string NewToType() => string.Join('-', Enumerable.Range(0, 8).Select(_ => RandomNumberGenerator.GetString(Spoken, 4)));

    /// <summary>What is kept of a secret that was typed by hand: small letters, and what stands between the groups, do not matter.</summary>
    public static byte[] HashTyped(string secret) => Hash(string.Join('-', secret.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant).Chunk(4).Select(group => new string(group))));

    /// <summary>What is kept of a secret (SHA-256, FIPS 180-4).</summary>
    public static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
