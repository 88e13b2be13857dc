using System.Buffers.Text;
using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;

namespace PressRun.Data.Quotes;

/// <summary>
/// The secret in a link's address (a capability URL, W3C TAG <i>Good Practices for Capability URLs</i>): 192 random bits from the system's
/// generator, as 32 characters that stand in an address as they are. Only its SHA-256 is stored.
/// </summary>
public static class LinkSecret
{
    private const int Bytes = 24;

    /// <summary>Characters of a secret.</summary>
    public const int Length = Bytes * 4 / 3;

    /// <summary>A new secret.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>The hash by which a secret is looked up; false where the text is none.</summary>
    public static bool TryHash(string? secret, [NotNullWhen(true)] out byte[]? hash)
    {
        hash = secret is { Length: Length } && Base64Url.IsValid(secret) ? SHA256.HashData(Encoding.ASCII.GetBytes(secret)) : null;
        return hash is not null;
    }
}
