namespace MenuLab.Core.House;

/// <summary>Identifies a person; the only thing about a person that a frozen row keeps.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct PersonId(Guid Value)
{
    /// <summary>A new id; later ids sort later.</summary>
    public static PersonId New() => new(Guid.CreateVersion7());
}

/// <summary>What sort of person a row stands for.</summary>
public enum PersonKind
{
    /// <summary>Whoever sits at this machine; the one row of a house without accounts.</summary>
    AtThisMachine,
    /// <summary>Somebody of the house.</summary>
    Staff,
    /// <summary>Somebody who came for a tasting.</summary>
    Guest,
}

/// <summary>A person's details: the one place where a name stands, so that emptying one row erases somebody (design, decision 4).</summary>
public sealed class Person
{
    /// <summary>Most characters in a name.</summary>
    public const int NameMaxLength = 80;

    /// <summary>Most characters in initials.</summary>
    public const int InitialsMaxLength = 4;

    private Person(PersonId id, string name, string initials, PersonKind kind)
    {
        Id = id;
        Name = name;
        Initials = initials;
        Kind = kind;
    }

    /// <summary>Identity.</summary>
    public PersonId Id { get; private set; }

    /// <summary>Name as shown; empty once erased.</summary>
    public string Name { get; private set; }

    /// <summary>Initials as shown in tight places; empty once erased.</summary>
    public string Initials { get; private set; }

    /// <summary>What sort of person.</summary>
    public PersonKind Kind { get; private set; }

    /// <summary>When the details were erased; null while they stand.</summary>
    public DateTimeOffset? ErasedAt { get; private set; }

    /// <summary>A person.</summary>
    /// <param name="id">Identity.</param>
    /// <param name="name">Name, 1 to 80 characters without line breaks.</param>
    /// <param name="initials">Initials, up to 4 characters.</param>
    /// <param name="kind">What sort of person.</param>
    /// <returns>The person, or what is wrong with the name or the initials.</returns>
    public static Result<Person> Of(PersonId id, string? name, string? initials, PersonKind kind)
    {
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(name, 1, NameMaxLength, nameof(Name), "a name", problems);
        var letters = OneLine.Check(initials, 0, InitialsMaxLength, nameof(Initials), "initials", problems);
        return problems.Count > 0 ? Result.Invalid<Person>(problems) : Result.Ok(new Person(id, trimmed, letters, kind));
    }

    /// <summary>Empties the details; the id stays, and with it what frozen rows say.</summary>
    public void Erase(DateTimeOffset at)
    {
        Name = "";
        Initials = "";
        ErasedAt ??= at;
    }
}
