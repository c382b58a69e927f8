using System.IO.Compression;

namespace MenuLab.Core.Iterations;

/// <summary>
/// Bytes as stored: the first one says how. Packed here and not by a database, so that every database holds the same
/// bytes (architecture 2.3).
/// </summary>
public static class Packed
{
    private const byte AsIs = 0;
    private const byte Brotli = 1;

    /// <summary>Most bytes that unpacking gives: far above any drink, far below what a damaged file could ask for.</summary>
    public const int MostBytes = 16 * 1024 * 1024;

    /// <summary>Packs a content.</summary>
    /// <exception cref="ArgumentException">More than <see cref="MostBytes"/>.</exception>
    public static byte[] Pack(ReadOnlySpan<byte> content)
    {
        if (content.Length > MostBytes)
        {
            throw new ArgumentException($"At most {MostBytes} bytes.", nameof(content));
        }
        var room = new byte[1 + BrotliEncoder.GetMaxCompressedLength(content.Length)];
        // Quality 1 is what CompressionLevel.Fastest means; 22 bits is the library's usual window.
        if (BrotliEncoder.TryCompress(content, room.AsSpan(1), out var written, quality: 1, window: 22) && written < content.Length)
        {
            room[0] = Brotli;
            return room[..(1 + written)];
        }
        return [AsIs, .. content];
    }

    /// <summary>The content of packed bytes.</summary>
    /// <exception cref="InvalidDataException">Packed in a way that this version does not know, or damaged.</exception>
    public static byte[] Unpack(ReadOnlySpan<byte> packed)
    {
        switch (packed.IsEmpty ? byte.MaxValue : packed[0])
        {
            case AsIs:
                return packed[1..].ToArray();
            case Brotli:
                for (var size = Math.Max(256, 8 * packed.Length); ; size = Math.Min(2 * size, MostBytes))
                {
                    var room = new byte[size];
                    if (BrotliDecoder.TryDecompress(packed[1..], room, out var written))
                    {
                        return room[..written];
                    }
                    if (size == MostBytes)
                    {
                        throw new InvalidDataException("These bytes are damaged: they cannot be unpacked.");
                    }
                }
            default:
                throw new InvalidDataException("These bytes are packed in a way that this version does not know.");
        }
    }
}
