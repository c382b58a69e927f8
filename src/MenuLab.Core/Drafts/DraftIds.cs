namespace MenuLab.Core.Drafts;

/// <summary>Identifies a draft.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct DraftId(Guid Value)
{
    /// <summary>A new id; later ids sort later.</summary>
    public static DraftId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies a line of a working copy while it moves up and down; made where the line is typed.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct LineId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static LineId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies an edit; made where it is typed, so that sending it twice does nothing twice.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct EditId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static EditId New() => new(Guid.CreateVersion7());
}

/// <summary>Identifies one open page; two pages of one person can overwrite each other just as two people can.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct PageId(Guid Value)
{
    /// <summary>A new id.</summary>
    public static PageId New() => new(Guid.CreateVersion7());
}
