using System.Buffers.Binary;
using System.Text;

namespace MenuLab.Print.Fonts;

/// <summary>
/// What layout needs of a TrueType file: which characters it has and how wide they are. PDFsharp draws a character that
/// the face lacks as nothing and says nothing, so this is asked first. Widths add up: PDFsharp does not kern.
/// </summary>
/// <remarks>Source: OpenType specification, tables cmap (format 12), head, hhea, hmtx.</remarks>
internal sealed class FontFile
{
    private readonly Dictionary<int, int> _glyphs = [];
    private readonly double[] _advances;

    public FontFile(byte[] bytes)
    {
        Bytes = bytes;
        var tables = new Dictionary<string, int>();
        for (var i = 0; i < UInt16(4); i++)
        {
            tables[Encoding.ASCII.GetString(bytes, 12 + 16 * i, 4)] = (int)UInt32(12 + 16 * i + 8);
        }
        ReadCharacterMap(tables["cmap"]);
        double unitsPerEm = UInt16(tables["head"] + 18);
        var measured = UInt16(tables["hhea"] + 34);
        _advances = new double[measured];
        for (var glyph = 0; glyph < measured; glyph++)
        {
            _advances[glyph] = UInt16(tables["hmtx"] + 4 * glyph) / unitsPerEm;
        }
    }

    public byte[] Bytes { get; }

    public bool Has(Rune character) => _glyphs.ContainsKey(character.Value);

    /// <summary>Width of a text in ems; a character that the face lacks has none.</summary>
    public double Ems(string text)
    {
        var sum = 0.0;
        foreach (var character in text.EnumerateRunes())
        {
            // The last advance holds for all glyphs after it.
            sum += _glyphs.TryGetValue(character.Value, out var glyph) ? _advances[Math.Min(glyph, _advances.Length - 1)] : 0;
        }
        return sum;
    }

    private void ReadCharacterMap(int table)
    {
        for (var i = 0; i < UInt16(table + 2); i++)
        {
            var start = table + (int)UInt32(table + 4 + 8 * i + 4);
            if (UInt16(start) != 12)
            {
                continue;
            }
            var groups = (int)UInt32(start + 12);
            for (var g = 0; g < groups; g++)
            {
                var group = start + 16 + 12 * g;
                var first = (int)UInt32(group);
                var last = (int)UInt32(group + 4);
                for (var character = first; character <= last; character++)
                {
                    _glyphs[character] = (int)UInt32(group + 8) + character - first;
                }
            }
            return;
        }
        throw new InvalidDataException("The font has no character map of format 12.");
    }

    private ushort UInt16(int at) => BinaryPrimitives.ReadUInt16BigEndian(Bytes.AsSpan(at));

    private uint UInt32(int at) => BinaryPrimitives.ReadUInt32BigEndian(Bytes.AsSpan(at));
}
