namespace MenuLab.Core.Pantry;

/// <summary>
/// The allergens of EU Regulation 1169/2011 Annex II (fourteen) and of US law (nine: FALCPA and the FASTER Act). Wheat
/// is told apart from the other gluten cereals, since only wheat counts in the US.
/// </summary>
public enum Allergen
{
    /// <summary>Cereals with gluten: wheat, rye, barley, oats (EU).</summary>
    Gluten,
    /// <summary>Wheat (US; in the EU within gluten).</summary>
    Wheat,
    /// <summary>Crustaceans.</summary>
    Crustaceans,
    /// <summary>Egg.</summary>
    Egg,
    /// <summary>Fish.</summary>
    Fish,
    /// <summary>Peanut.</summary>
    Peanut,
    /// <summary>Soy.</summary>
    Soy,
    /// <summary>Milk.</summary>
    Milk,
    /// <summary>Tree nuts.</summary>
    TreeNuts,
    /// <summary>Celery (EU).</summary>
    Celery,
    /// <summary>Mustard (EU).</summary>
    Mustard,
    /// <summary>Sesame.</summary>
    Sesame,
    /// <summary>Sulphites at 10 mg/kg or 10 mg/L and more (EU; in the US a declaration of its own).</summary>
    Sulphites,
    /// <summary>Lupin (EU).</summary>
    Lupin,
    /// <summary>Molluscs (EU).</summary>
    Molluscs,
}

/// <summary>What is known of an allergen; never a yes or no.</summary>
public enum AllergenState
{
    /// <summary>Nothing says it is there. Says nothing about carriers or a factory.</summary>
    Absent,
    /// <summary>It is there.</summary>
    Present,
    /// <summary>Nobody has read the label yet: a question, held open.</summary>
    Unknown,
}

/// <summary>The allergens of an ingredient or a drink: present, unknown or absent each. The default value is all absent.</summary>
/// <param name="Present">One bit per <see cref="Allergen"/> that is there.</param>
/// <param name="Unknown">One bit per <see cref="Allergen"/> that is an open question.</param>
public readonly record struct AllergenSet(uint Present, uint Unknown)
{
    /// <summary>What is known of one allergen.</summary>
    public AllergenState this[Allergen allergen] =>
        (Present >> (int)allergen & 1) != 0 ? AllergenState.Present
        : (Unknown >> (int)allergen & 1) != 0 ? AllergenState.Unknown
        : AllergenState.Absent;

    /// <summary>The same set with one allergen's state changed.</summary>
    public AllergenSet With(Allergen allergen, AllergenState state)
    {
        var bit = 1u << (int)allergen;
        return new AllergenSet(
            state == AllergenState.Present ? Present | bit : Present & ~bit,
            state == AllergenState.Unknown ? Unknown | bit : Unknown & ~bit);
    }

    /// <summary>What two things together contain: present wins over unknown, unknown over absent.</summary>
    public static AllergenSet operator |(AllergenSet left, AllergenSet right)
    {
        var present = left.Present | right.Present;
        return new AllergenSet(present, (left.Unknown | right.Unknown) & ~present);
    }
}
