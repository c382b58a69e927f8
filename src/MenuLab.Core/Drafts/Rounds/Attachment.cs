using MenuLab.Core.House;

namespace MenuLab.Core.Drafts.Rounds;

/// <summary>What an attachment is.</summary>
public enum AttachmentKind
{
    /// <summary>A photo.</summary>
    Photo,
    /// <summary>A sound.</summary>
    Sound,
}

/// <summary>A photo or a sound of a note. Not frozen: a picture may show a person, and who is erased must go from it.</summary>
public sealed class Attachment
{
    /// <summary>Most bytes of a photo or a sound.</summary>
    public const int MostBytes = 8 * 1024 * 1024;

    /// <summary>Most characters in a media type.</summary>
    public const int MediaTypeMaxLength = 40;

    // What browsers take from a file input and show without running anything; an SVG can carry a script.
    private static readonly Dictionary<string, AttachmentKind> Types = new(StringComparer.OrdinalIgnoreCase)
    {
        ["image/jpeg"] = AttachmentKind.Photo, ["image/png"] = AttachmentKind.Photo, ["image/webp"] = AttachmentKind.Photo, ["image/heic"] = AttachmentKind.Photo,
        ["audio/mpeg"] = AttachmentKind.Sound, ["audio/mp4"] = AttachmentKind.Sound, ["audio/x-m4a"] = AttachmentKind.Sound, ["audio/aac"] = AttachmentKind.Sound,
        ["audio/ogg"] = AttachmentKind.Sound, ["audio/webm"] = AttachmentKind.Sound, ["audio/wav"] = AttachmentKind.Sound, ["audio/3gpp"] = AttachmentKind.Sound,
    };

    private Attachment(AttachmentId id, AttachmentKind kind, string mediaType, byte[] bytes, PersonId by, DateTimeOffset at)
    {
        Id = id;
        Kind = kind;
        MediaType = mediaType;
        Bytes = bytes;
        By = by;
        At = at;
    }

    /// <summary>Identity.</summary>
    public AttachmentId Id { get; private set; }

    /// <summary>What it is.</summary>
    public AttachmentKind Kind { get; private set; }

    /// <summary>Its media type (RFC 6838), without parameters.</summary>
    public string MediaType { get; private set; }

    /// <summary>Its content.</summary>
    public byte[] Bytes { get; private set; }

    /// <summary>Who took it.</summary>
    public PersonId By { get; private set; }

    /// <summary>When it arrived.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>An attachment.</summary>
    /// <param name="id">Identity, made on the device.</param>
    /// <param name="mediaType">Media type as the browser says it; parameters are dropped.</param>
    /// <param name="bytes">Content, 1 byte to 8 MiB.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <returns>The attachment, or what is wrong with it.</returns>
    public static Result<Attachment> Of(AttachmentId id, string? mediaType, byte[] bytes, PersonId by, DateTimeOffset at)
    {
        var problems = new List<Problem>();
        var type = (mediaType ?? "").Split(';')[0].Trim().ToLowerInvariant();
        if (!Types.TryGetValue(type, out var kind))
        {
            problems.Add(new Problem("media_type", "Send a photo (JPEG, PNG, WebP, HEIC) or a sound (MP3, M4A, AAC, OGG, WebM, WAV)."));
        }
        if (bytes.Length is 0 or > MostBytes)
        {
            problems.Add(new Problem("bytes", $"A photo or a sound has at most {MostBytes / 1024 / 1024} MB."));
        }
        return problems.Count > 0 ? Result.Invalid<Attachment>(problems) : Result.Ok(new Attachment(id, kind, type, bytes, by, at));
    }
}
