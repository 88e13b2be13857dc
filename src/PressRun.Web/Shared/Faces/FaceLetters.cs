using System.Buffers.Binary;
using System.Collections;

namespace PressRun.Web.Shared.Faces;

/// <summary>Which letters a face has: read from its table <c>cmap</c>, in the two formats that fonts of today bring (OpenType 1.9, cmap, formats 4 and 12).</summary>
internal sealed class FaceLetters
{
    private const int Planes = 0x30000;
    private const int Unicode = 0;
    private const int Windows = 3;

    private readonly BitArray has = new(Planes);

    private FaceLetters()
    {
    }

    /// <summary>True where the face has a letter.</summary>
    public bool Has(int letter) => letter < Planes && has[letter];

    /// <summary>Reads a TrueType file.</summary>
    public static FaceLetters Read(ReadOnlySpan<byte> font)
    {
        var letters = new FaceLetters();
        var cmap = font[TableAt(font, "cmap"u8)..];
        for (var place = 0; place < Short(cmap, 2); place++)
        {
            var record = cmap[(4 + (8 * place))..];
            if (Short(record, 0) is Unicode or Windows)
            {
                letters.Take(cmap[Long(record, 4)..]);
            }
        }

        return letters;
    }

    private static int TableAt(ReadOnlySpan<byte> font, ReadOnlySpan<byte> name)
    {
        for (var place = 0; place < Short(font, 4); place++)
        {
            var record = font[(12 + (16 * place))..];
            if (record[..4].SequenceEqual(name))
            {
                return Long(record, 8);
            }
        }

        throw new InvalidOperationException("The face does not say which letters it has.");
    }

    private void Take(ReadOnlySpan<byte> table)
    {
        switch (Short(table, 0))
        {
            case 4:
                var doubled = Short(table, 6);
                for (var segment = 0; segment < doubled; segment += 2)
                {
                    Take(Short(table, 16 + doubled + segment), Math.Min(Short(table, 14 + segment), 0xFFFE));
                }

                break;
            case 12:
                for (var group = 0; group < Long(table, 12); group++)
                {
                    Take(Long(table, 16 + (12 * group)), Long(table, 20 + (12 * group)));
                }

                break;
        }
    }

    private void Take(int first, int last)
    {
        for (var letter = first; letter <= last && letter < Planes; letter++)
        {
            has[letter] = true;
        }
    }

    private static int Short(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);

    private static int Long(ReadOnlySpan<byte> bytes, int at) => (int)BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
}
