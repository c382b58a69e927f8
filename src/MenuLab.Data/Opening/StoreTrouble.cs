namespace MenuLab.Data.Opening;

/// <summary>Why a database cannot be used, or a write was not kept.</summary>
public enum StoreTrouble
{
    /// <summary>Another host has the file open.</summary>
    InUse,
    /// <summary>The file or its folder may not be written.</summary>
    ReadOnly,
    /// <summary>The file is no database, or damaged.</summary>
    Damaged,
    /// <summary>A newer version of the program made it.</summary>
    Newer,
    /// <summary>Migrating took too long, or an earlier migration was cut off.</summary>
    MigrationStuck,
    /// <summary>A frozen table lacks its triggers.</summary>
    NotFrozen,
    /// <summary>The disk is full.</summary>
    DiskFull,
    /// <summary>The disk cannot be read or written: full to the last byte, or failing.</summary>
    DiskFault,
    /// <summary>Another program holds the database.</summary>
    Busy,
    /// <summary>The server cannot be reached.</summary>
    Unreachable,
}

/// <summary>Something about the database that a person must put right; the message says what and how. Nothing was overwritten.</summary>
public sealed class StoreException(StoreTrouble trouble, string message, Exception? inner = null) : Exception(message, inner)
{
    public StoreTrouble Trouble { get; } = trouble;
}
