namespace MenuLab.Data.Seeding;

/// <summary>A fault in a file of seed-data; the message names file, line and column.</summary>
public sealed class SeedDataException(string message, Exception? inner = null) : Exception(message, inner);
