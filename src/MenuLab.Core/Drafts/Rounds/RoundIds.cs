namespace MenuLab.Core.Drafts.Rounds;

/// <summary>Identifies a round.</summary>
/// <param name="Value">A version 7 Guid, made by the page, so that starting twice starts once.</param>
public readonly record struct RoundId(Guid Value)
{
    /// <summary>A new id; later ids sort later.</summary>
    public static RoundId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies what was captured; made on the device before anything is sent, so that sending it twice does nothing twice.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct EntryId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static EntryId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies a device, or an open page where there is no other; two devices of one person can overwrite each other just as two people can.</summary>
/// <param name="Value">A version 7 Guid, kept on the device.</param>
public readonly record struct DeviceId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static DeviceId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies a photo or a sound.</summary>
/// <param name="Value">A version 7 Guid, made on the device.</param>
public readonly record struct AttachmentId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static AttachmentId New() => new(Guid.CreateVersion7());
}

/// <summary>The name of a pour within its round.</summary>
public enum PourLetter
{
    /// <summary>The first.</summary>
    A,
    /// <summary>The second.</summary>
    B,
    /// <summary>The third.</summary>
    C,
    /// <summary>The fourth.</summary>
    D,
    /// <summary>The fifth.</summary>
    E,
    /// <summary>The sixth.</summary>
    F,
}
