namespace MenuLab.Core.Safety;

/// <summary>Salts that quinine is sold as.</summary>
public enum QuinineSalt
{
    /// <summary>The base itself.</summary>
    Base,
    /// <summary>Quinine sulphate dihydrate.</summary>
    SulphateDihydrate,
    /// <summary>Quinine hydrochloride dihydrate.</summary>
    HydrochlorideDihydrate,
}

/// <summary>A part of a drink with its alcohol.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Millilitres">Its volume, mL, zero or more.</param>
/// <param name="AbvPercent">Its strength, % vol, 0 to 100; NaN where nobody knows.</param>
public readonly record struct EthanolPart(string Name, double Millilitres, double AbvPercent);

/// <summary>Doses and levels that the rules compare.</summary>
public static class Doses
{
    /// <summary>Body mass that acceptable daily intakes are stated for, kg (EFSA convention for an adult in labelling: 60; MEMORY).</summary>
    public const double BodyKilograms = 60;

    /// <summary>mL of ethanol that a gram of hexose can become: 0.5114 g/g (stoichiometry) over 0.78924 g/mL (OIML R 22, 20 °C).</summary>
    public const double EthanolMillilitresPerGramHexose = 0.5114 / 0.78924;

    /// <summary>A gram of sucrose takes up water and gives 1.0526 g of hexose (360.31/342.30).</summary>
    public const double HexosePerSucrose = 1.0526;

    // Molar volume of an ideal gas at 20 °C and 101.325 kPa over the molar mass of carbon dioxide, m3/kg: 24.055 L/mol over 44.0095 g/mol.
    private const double CarbonDioxideCubicMetresPerKilogram = 24.055 / 44.0095;

    /// <summary>Level of a dose in a volume, per litre in the dose's unit.</summary>
    /// <param name="dose">Dose, zero or more.</param>
    /// <param name="millilitres">Volume, mL, above zero.</param>
    public static double PerLitre(double dose, double millilitres) => Guard.FiniteNonNegative(dose) / Positive(millilitres) * 1000;

    /// <summary>Dose per kg of body, in the dose's unit.</summary>
    /// <param name="dose">Dose, zero or more.</param>
    /// <param name="bodyKilograms">Body mass, kg, above zero.</param>
    public static double PerBodyKilogram(double dose, double bodyKilograms = BodyKilograms) => Guard.FiniteNonNegative(dose) / Positive(bodyKilograms);

    /// <summary>Quinine as base, mg, in so many mg of a salt.</summary>
    /// <remarks>
    /// Source: molar masses, quinine 324.42, (C20H24N2O2)2·H2SO4·2H2O 782.94, C20H24N2O2·HCl·2H2O 396.91 g/mol: factors 0.829 and 0.817 (COMPUTED).
    /// Error: below 0.1 % for pure salts; trade purity is the supplier's to say.
    /// </remarks>
    public static double QuinineBase(QuinineSalt salt, double milligrams) => Guard.FiniteNonNegative(milligrams) * salt switch
    {
        QuinineSalt.SulphateDihydrate => 2 * 324.42 / 782.94,
        QuinineSalt.HydrochlorideDihydrate => 324.42 / 396.91,
        _ => 1,
    };

    /// <summary>Coumarin, mg, in so many grams of cassia.</summary>
    /// <param name="cassiaGrams">Cassia, g.</param>
    /// <param name="gramsPerKilogram">Its coumarin, g/kg; cassia holds 2 to 7 and more, Ceylon cinnamon hardly any (MEMORY).</param>
    public static double Coumarin(double cassiaGrams, double gramsPerKilogram) => Guard.FiniteNonNegative(cassiaGrams) * Guard.FiniteNonNegative(gramsPerKilogram);

    /// <summary>Carried-over level: mg/L in the drink from mg/L in one ingredient.</summary>
    public static double CarriedOver(double perLitreInIngredient, double ingredientMillilitres, double drinkMillilitres) =>
        Guard.FiniteNonNegative(perLitreInIngredient) * Guard.FiniteNonNegative(ingredientMillilitres) / Positive(drinkMillilitres);

    /// <summary>Strength that the sugar left in a ferment can still add, % vol.</summary>
    /// <param name="hexoseGramsPerLitre">Glucose and fructose left, g/L.</param>
    /// <param name="sucroseGramsPerLitre">Sucrose left, g/L.</param>
    /// <remarks>Source: stoichiometry, C6H12O6 to 2 C2H5OH and 2 CO2. An upper bound: yeast spends some. Error: none in the sum, sugars not told apart count as sucrose.</remarks>
    public static double PotentialAbv(double hexoseGramsPerLitre, double sucroseGramsPerLitre = 0) =>
        (Guard.FiniteNonNegative(hexoseGramsPerLitre) + Guard.FiniteNonNegative(sucroseGramsPerLitre) * HexosePerSucrose) * EthanolMillilitresPerGramHexose / 10;

    /// <summary>Carbon dioxide in a closed room, ppm by volume, from dry ice that has all gone, without ventilation.</summary>
    /// <param name="dryIceKilograms">Dry ice, kg.</param>
    /// <param name="roomCubicMetres">Room, m3, above zero.</param>
    /// <remarks>Source: ideal gas at 20 °C and 1 atm. Leaves out the 400 ppm that are there anyway and any leak outward. Error: below 1 % of the rise.</remarks>
    public static double RoomCarbonDioxide(double dryIceKilograms, double roomCubicMetres) =>
        Guard.FiniteNonNegative(dryIceKilograms) * CarbonDioxideCubicMetresPerKilogram / Positive(roomCubicMetres) * 1e6;

    /// <summary>Strength of a finished drink, % vol, from every part that carries alcohol.</summary>
    /// <param name="parts">All parts with alcohol: bitters, extracts, tinctures, ferments, rinses too. An unmeasured dash counts 0.924 mL (1/32 US fl oz) here.</param>
    /// <param name="finalMillilitres">Volume as served, dilution and all, mL, above zero.</param>
    /// <returns>% vol; NaN where the strength of a part is not known.</returns>
    /// <remarks>Source: sum of volume times strength over the final volume; the contraction of mixing, below 0.1 % at these strengths, is left out.</remarks>
    public static double Abv(IEnumerable<EthanolPart> parts, double finalMillilitres)
    {
        var volume = Positive(finalMillilitres);
        return parts.Sum(p => double.IsNaN(p.AbvPercent) ? double.NaN : Guard.FiniteNonNegative(p.Millilitres) * Guard.InRange(p.AbvPercent, 0, 100)) / volume;
    }

    private static double Positive(double value) => value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Must be a finite number above zero.");
}
