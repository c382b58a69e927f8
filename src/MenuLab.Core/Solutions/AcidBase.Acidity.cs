namespace MenuLab.Core.Solutions;

/// <summary>What pH and titration tell about an ingredient.</summary>
/// <param name="TotalMolesPerLitre">All counted acids together, mol/L; NaN when the figures do not fit.</param>
/// <param name="ChargeMolesPerLitre">Strong-ion difference, mol/L; NaN when the figures do not fit.</param>
/// <param name="Converged">The figures fit: the total is zero or more and the iteration came to rest.</param>
public readonly record struct Inferred(double TotalMolesPerLitre, double ChargeMolesPerLitre, bool Converged);

public static partial class AcidBase
{
    /// <summary>Molar mass of citric acid monohydrate, g/mol; all masses of citric acid in MenuLab are of the anhydrous acid.</summary>
    public const double CitricMonohydrateGramsPerMole = 210.139;

    /// <summary>Above this share of the protons of the acids, the charge of the minerals says that an anion is missing from the profile.</summary>
    public const double HighestShareOfMineralCharge = 0.9;

    private const int InferenceRounds = 200;

    // Protons that a titration to the end point counts, in the order of Component; carbonic counts for the guard on minerals only.
    private static ReadOnlySpan<byte> Protons => [3, 2, 2, 1, 1, 1, 2, 2, 1, 2, 1];

    /// <summary>Titratable acidity of a composed liquid.</summary>
    /// <param name="acidMolesPerLitre">Total acids, mol/L; carbonic is left out, as a sample is degassed first.</param>
    /// <param name="chargeMolesPerLitre">Strong-ion difference, mol/L.</param>
    /// <param name="endPoint">pH at which the titration ends.</param>
    /// <returns>eq/L; times 6.4041 it is g of anhydrous citric acid per 100 mL. Negative where the liquid starts above the end point.</returns>
    /// <remarks>
    /// Source: charge balance before and at the end point; the charge at the end point is ideal, by convention (docs/science.md, section 4).
    /// Phosphoric counts 1.889 and not 2. Valid for: end points 7 to 9. Error: 2 %, the care of a titration.
    /// </remarks>
    /// <exception cref="ArgumentException">The span is not one number per acid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN acid, a charge that is not finite, an end point outside -1 to 14.</exception>
    public static double TitratableEquivalentsPerLitre(ReadOnlySpan<double> acidMolesPerLitre, double chargeMolesPerLitre, double endPoint = EndPoint)
    {
        CheckAcids(acidMolesPerLitre);
        Guard.InRange(endPoint, LowestPh, HighestPh);
        var powers = new Powers(endPoint, 0);
        var sum = -Guard.Finite(chargeMolesPerLitre) - (powers.Hydrogen - powers.Hydroxide);
        for (var a = 0; a < acidMolesPerLitre.Length - 1; a++)
        {
            if (acidMolesPerLitre[a] != 0)
            {
                sum += acidMolesPerLitre[a] * new Moments(a, powers).First;
            }
        }
        return sum;
    }

    /// <summary>Total acid and charge of an ingredient whose pH and titratable acidity were read.</summary>
    /// <param name="ph">pH read, below 8.1.</param>
    /// <param name="titratableEquivalentsPerLitre">Titratable acidity to pH 8.1, eq/L.</param>
    /// <param name="profileAmountFractions">Shares of the acids by moles, one per acid; taken relative to their sum, carbonic left out.</param>
    /// <returns>Total acid and charge, mol/L; not converged where the figures contradict each other (no acid, pH at or above the end point).</returns>
    /// <remarks>
    /// Source: charge balance at the pH read and at the end point, with Davies activities at the pH.
    /// Valid for: degassed juices, vinegars, wines. Error: 0.05 in pH moves lemon juice's charge by 6.5 meq/L; 2 % of titration the total by 2 %.
    /// </remarks>
    /// <exception cref="ArgumentException">The span is not one number per acid, or holds no acid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A pH outside -1 to 14, a negative, infinite or NaN acidity or share.</exception>
    public static Inferred InferFrom(double ph, double titratableEquivalentsPerLitre, ReadOnlySpan<double> profileAmountFractions)
    {
        Guard.InRange(ph, LowestPh, HighestPh);
        Guard.FiniteNonNegative(titratableEquivalentsPerLitre);
        CheckAcids(profileAmountFractions);
        var counted = profileAmountFractions[..^1];
        var shares = 0.0;
        var chargeAtEnd = 0.0;
        for (var a = 0; a < counted.Length; a++)
        {
            shares += counted[a];
            chargeAtEnd += counted[a] * ChargesAtEndPoint[a];
        }
        if (shares == 0)
        {
            throw new ArgumentException("The profile names no acid.", nameof(profileAmountFractions));
        }
        chargeAtEnd /= shares;

        var end = new Powers(EndPoint, 0);
        var strength = 0.02;
        for (var round = 0; round < InferenceRounds; round++)
        {
            var powers = new Powers(ph, Davies(strength, out _));
            double mean = 0, square = 0;
            for (var a = 0; a < counted.Length; a++)
            {
                if (counted[a] != 0)
                {
                    var m = new Moments(a, powers);
                    mean += counted[a] * m.First;
                    square += counted[a] * m.Second;
                }
            }
            mean /= shares;
            square /= shares;
            var water = powers.Hydrogen - powers.Hydroxide;
            var total = (titratableEquivalentsPerLitre - water + (end.Hydrogen - end.Hydroxide)) / (chargeAtEnd - mean);
            var charge = total * mean - water;
            if (!(total >= 0) || !double.IsFinite(total))
            {
                break;
            }
            var renewed = 0.5 * (Math.Abs(charge) + powers.Hydrogen + powers.Hydroxide + total * square);
            if (Math.Abs(renewed - strength) < 1e-12)
            {
                return new Inferred(total, charge, Converged: true);
            }
            strength = renewed;
        }
        return new Inferred(double.NaN, double.NaN, Converged: false);
    }

    /// <summary>Charge that gives a liquid the pH that was read, its acids being as composed.</summary>
    /// <param name="ph">pH read.</param>
    /// <param name="acidMolesPerLitre">Total acids, mol/L.</param>
    /// <returns>Strong-ion difference, mol/L; NaN where the iteration on ionic strength does not come to rest.</returns>
    /// <remarks>Source: charge balance with Davies activities. Valid for: pH -1 to 14. Error: as <see cref="Solve"/>, turned round.</remarks>
    /// <exception cref="ArgumentException">The span is not one number per acid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A pH outside -1 to 14, or a negative, infinite or NaN acid.</exception>
    public static double ChargeFrom(double ph, ReadOnlySpan<double> acidMolesPerLitre)
    {
        Guard.InRange(ph, LowestPh, HighestPh);
        CheckAcids(acidMolesPerLitre);
        var strength = 0.02;
        for (var round = 0; round < InferenceRounds; round++)
        {
            // With no charge entered, the excess is minus the charge that is wanted.
            var at = new Balance(acidMolesPerLitre, 0, ph, strength, ideal: false);
            var charge = -at.ChargeExcess;
            var renewed = strength - at.StrengthExcess + 0.5 * Math.Abs(charge);
            if (Math.Abs(renewed - strength) < 1e-12)
            {
                return charge;
            }
            strength = renewed;
        }
        return double.NaN;
    }

    /// <summary>Charge of the minerals of an ingredient, where neither pH nor titration was read.</summary>
    /// <param name="sodium">mg/L; leave out what came as table salt, which brings its own chloride.</param>
    /// <param name="potassium">mg/L.</param>
    /// <param name="calcium">mg/L.</param>
    /// <param name="magnesium">mg/L.</param>
    /// <param name="phosphorus">mg/L, as the element.</param>
    /// <param name="phosphoricListed">Phosphoric acid stands among the acids already, so that phosphorus must not count twice.</param>
    /// <returns>Strong-ion difference, eq/L (mol/L of charge).</returns>
    /// <remarks>
    /// Source: equivalent masses from the standard atomic weights; phosphate as one charge (0.98 at pH 3.7, 0.67 at 2.35). Chloride is
    /// in none of our data and is left out. Valid for: fruit juices. Error: orange juice 61 to 66 meq/L either way, lime 43.5 against 44.7
    /// inferred from its pH. Check the result with <see cref="MineralChargeIsCredible"/>.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double ChargeFromMinerals(
        double sodium, double potassium, double calcium, double magnesium, double phosphorus, bool phosphoricListed) =>
        (Guard.FiniteNonNegative(sodium) / 22.99
         + Guard.FiniteNonNegative(potassium) / 39.10
         + 2 * Guard.FiniteNonNegative(calcium) / 40.08
         + 2 * Guard.FiniteNonNegative(magnesium) / 24.305
         - (phosphoricListed ? 0 : Guard.FiniteNonNegative(phosphorus) / 30.97)) / 1000;

    /// <summary>Whether the acids can carry the charge of the minerals; if not, an anion is missing and the pH cannot be computed.</summary>
    /// <param name="chargeMolesPerLitre">Strong-ion difference from minerals, mol/L.</param>
    /// <param name="acidMolesPerLitre">Total acids, mol/L.</param>
    /// <returns>False above 0.9 of the protons that the acids have to give (tomato, celery and other vegetables).</returns>
    /// <remarks>Source: house rule, no outside source (docs/science.md, section 5). Valid for: ingredients computed from a food table. Error: a rule, not a measurement.</remarks>
    /// <exception cref="ArgumentException">The span is not one number per acid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN acid, or a charge that is not finite.</exception>
    public static bool MineralChargeIsCredible(double chargeMolesPerLitre, ReadOnlySpan<double> acidMolesPerLitre)
    {
        CheckAcids(acidMolesPerLitre);
        var protons = 0.0;
        for (var a = 0; a < acidMolesPerLitre.Length; a++)
        {
            protons += acidMolesPerLitre[a] * Protons[a];
        }
        return Guard.Finite(chargeMolesPerLitre) <= HighestShareOfMineralCharge * protons;
    }

    /// <summary>Mass of an acid that gives one mole of H+ in a titration.</summary>
    /// <param name="acid">An acid but carbonic, which is not counted.</param>
    /// <returns>g/mol of H+.</returns>
    /// <remarks>
    /// Source: molar mass over the number of protons titrated; AOAC 942.15 prints the same over 1000. Valid for: single acids with an end
    /// point near 8.1 (phosphoric counts 2 here and 1.889 in a mixture, 5.5 % apart). Error: 0.01 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Not an acid, or carbonic.</exception>
    public static double EquivalentMass(Component acid) =>
        acid == Component.Carbonic
            ? throw new ArgumentOutOfRangeException(nameof(acid), acid, "Carbon dioxide is not counted in an acidity.")
            : Components.GramsPerUnit(acid) / Protons[IndexOf(acid)];

    /// <summary>Restates an acidity given as one acid as the same acidity given as another.</summary>
    /// <param name="grams">Titratable acidity, g in any volume, stated as <paramref name="from"/>.</param>
    /// <param name="from">The acid it is stated as; not carbonic.</param>
    /// <param name="to">The acid to state it as; not carbonic.</param>
    /// <returns>Titratable acidity, g in the same volume, stated as <paramref name="to"/>.</returns>
    /// <remarks>
    /// Source: ratio of equivalent masses, molar masses from the abridged standard atomic weights. Citric acid is anhydrous: a figure by the
    /// factor 0.070 of AOAC 942.15 is of the monohydrate and 9.4 % higher. Valid for: full neutralisation (end point near pH 8.1);
    /// says nothing about pH. Error: below 0.01 %.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN acidity; not an acid, or carbonic.</exception>
    public static double ConvertAcidity(double grams, Component from, Component to) =>
        Guard.FiniteNonNegative(grams) * EquivalentMass(to) / EquivalentMass(from);
}
