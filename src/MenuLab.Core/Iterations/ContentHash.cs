using System.Security.Cryptography;

namespace MenuLab.Core.Iterations;

/// <summary>SHA-256 of a canonical text. It has no default: an unset hash refuses to be read.</summary>
public readonly record struct ContentHash
{
    /// <summary>Bytes in a hash.</summary>
    public const int Length = 32;

    private readonly string? _hex;

    private ContentHash(string hex) => _hex = hex;

    /// <summary>64 lower-case hexadecimal digits.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public string Hex => _hex ?? throw new InvalidOperationException("This hash was never set.");

    /// <summary>The 32 bytes.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public byte[] ToBytes() => Convert.FromHexString(Hex);

    /// <summary>The hash of a content.</summary>
    public static ContentHash Of(ReadOnlySpan<byte> content) => FromBytes(SHA256.HashData(content));

    /// <summary>A hash that was stored.</summary>
    /// <exception cref="ArgumentException">Not 32 bytes.</exception>
    public static ContentHash FromBytes(ReadOnlySpan<byte> bytes) =>
        bytes.Length == Length ? new ContentHash(Convert.ToHexStringLower(bytes)) : throw new ArgumentException($"A hash has {Length} bytes.", nameof(bytes));

    /// <summary>A hash that was written.</summary>
    /// <exception cref="FormatException">Not 64 hexadecimal digits.</exception>
    public static ContentHash FromHex(string hex) =>
        hex.Length == 2 * Length ? FromBytes(Convert.FromHexString(hex)) : throw new FormatException($"A hash has {2 * Length} hexadecimal digits.");

    /// <inheritdoc/>
    public override string ToString() => _hex ?? "unset";
}
