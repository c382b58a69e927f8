namespace MenuLab.Core.Solutions;

/// <summary>The pH of a liquid, as solved.</summary>
/// <param name="Ph">pH on the activity scale; the nearer end of -1 to 14 when the charges cannot balance between them.</param>
/// <param name="IonicStrength">Ionic strength, mol/L.</param>
/// <param name="Converged">The solve came to rest. When false, the pH is the best that was found.</param>
/// <param name="OutsideRange">No balance between pH -1 and 14, or a pH above 8, where the model is not meant for drinks.</param>
public readonly record struct PhSolution(double Ph, double IonicStrength, bool Converged, bool OutsideRange);

/// <summary>
/// Acids in water: charge, pH, titratable acidity, and what pH and titration tell about an ingredient.
/// Spans of acids hold mol/L (free and bound together) in the order of <see cref="Component"/> from <see cref="Components.FirstAcid"/>.
/// Charge is the strong-ion difference, mol/L of strong cations minus strong anions.
/// </summary>
/// <remarks>
/// Not modelled: ethanol (raises the apparent pKa by about 0.05 at 10 % vol and 0.12 at 20 %, MEMORY), protein as a buffer,
/// temperature (all constants are those of 25 °C; serving at 0 to 5 °C moves a drink by less than 0.05).
/// </remarks>
public static partial class AcidBase
{
    /// <summary>pH at which a titration ends unless said otherwise (AOAC 942.15, glass electrode).</summary>
    public const double EndPoint = 8.1;

    /// <summary>Lowest pH that is looked at.</summary>
    public const double LowestPh = -1;

    /// <summary>Highest pH that is looked at.</summary>
    public const double HighestPh = 14;

    /// <summary>A pH above this is kept but flagged: drinks end here.</summary>
    public const double HighestPhOfDrinks = 8;

    private const double Ln10 = 2.302585092994045684;
    private const double WaterPk = 13.995;
    private const double DaviesA = 0.509;
    private const double DaviesCap = 0.5;
    private const double Unused = double.PositiveInfinity;

    // Three pKa per acid, 25 °C and zero ionic strength, in the order of Component. Sources: Bates and Pinching (citric), CRC-type tables
    // (malic, lactic, acetic, succinic, phosphoric, carbonic, oxalic), Bates and Canham (tartaric, MEMORY); ascorbic and quinic MEMORY.
    // Carbonic is the apparent first constant, CO2(aq) and H2CO3 together.
    internal static ReadOnlySpan<double> Pk =>
    [
        3.128, 4.761, 6.396,
        3.40, 5.11, Unused,
        3.036, 4.366, Unused,
        4.756, Unused, Unused,
        3.86, Unused, Unused,
        4.17, 11.57, Unused,
        4.207, 5.636, Unused,
        2.148, 7.198, 12.35,
        3.46, Unused, Unused,
        1.25, 4.266, Unused,
        6.352, 10.329, Unused,
    ];

    // Products of the acidity constants, so that the species with i protons gone is Product[i] * (e^(i*i)) / h^i, e = 10^D.
    private static readonly double[] Products = MakeProducts();

    private static readonly double[] ChargesAtEndPoint = MakeChargesAtEndPoint();

    /// <summary>Mean negative charge of each acid at pH 8.1 without activities; 0 for carbonic, which is not counted in an acidity.</summary>
    /// <remarks>Source: the acids' pKa. Valid for: end point 8.1. Error: 0.002 from the pKa; phosphoric (1.889) 0.01.</remarks>
    public static ReadOnlySpan<double> ChargeAtEndPoint => ChargesAtEndPoint;

    /// <summary>Mean negative charge of an acid at a pH.</summary>
    /// <param name="acid">One of the acids.</param>
    /// <param name="ph">pH, activity scale.</param>
    /// <param name="d">Davies term: -log10 of the activity coefficient of a single charge; 0 for ideal.</param>
    /// <returns>Charges per molecule, 0 to 3.</returns>
    /// <remarks>Source: mass action with all protons, the third of citric and phosphoric too. Valid for: pH -1 to 14. Error: of the pKa, 0.02 to 0.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Not an acid, or a figure that is not finite.</exception>
    public static double MeanCharge(Component acid, double ph, double d)
    {
        var index = IndexOf(acid);
        var powers = new Powers(Guard.Finite(ph), Guard.Finite(d));
        return new Moments(index, powers).First;
    }

    /// <summary>Davies term at an ionic strength.</summary>
    /// <param name="ionicStrength">mol/L; above 0.5 the value at 0.5 is used.</param>
    /// <returns>-log10 of the activity coefficient of a single charge, at 25 °C.</returns>
    /// <remarks>Source: Davies equation, A = 0.509. Valid for: to 0.5 mol/L. Error: 0.02 in pH against the NBS buffers.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or NaN.</exception>
    public static double DaviesTerm(double ionicStrength) => Davies(Guard.FiniteNonNegative(ionicStrength), out _);

    /// <summary>The pH at which the charges balance.</summary>
    /// <param name="acidMolesPerLitre">Total acids, mol/L.</param>
    /// <param name="chargeMolesPerLitre">Strong-ion difference, mol/L.</param>
    /// <param name="ideal">Leave activities out (pH = -log10 of the concentration).</param>
    /// <returns>pH, ionic strength and how the solve ended; never an exception for figures that do not balance.</returns>
    /// <remarks>
    /// Source: electroneutrality with Davies activities. Newton on pH and ionic strength together, with the exact derivatives, always
    /// from pH 3: half the steps of Newton on pH with the ionic strength renewed between steps. If 14 steps do not do it, a
    /// bracketed solve at fixed ionic strength inside a loop on that strength.
    /// Valid for: drinks, syrups and juices; flagged above pH 8 or where nothing balances (charge above about 1.4 mol/L).
    /// Error: 0.02 for buffers, 0.08 (k = 1) for mixtures of measured ingredients, 0.20 with default ingredients.
    /// </remarks>
    /// <exception cref="ArgumentException">The span is not one number per acid.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A negative, infinite or NaN acid, or a charge that is not finite.</exception>
    public static PhSolution Solve(ReadOnlySpan<double> acidMolesPerLitre, double chargeMolesPerLitre, bool ideal = false)
    {
        CheckAcids(acidMolesPerLitre);
        Guard.Finite(chargeMolesPerLitre);

        const int steps = 14;
        const double phTolerance = 1e-7;
        var ph = 3.0;
        var strength = 0.02 + 0.5 * Math.Abs(chargeMolesPerLitre);
        for (var step = 0; step < steps; step++)
        {
            var at = new Balance(acidMolesPerLitre, chargeMolesPerLitre, ph, strength, ideal);
            // The step that solves both linearised equations: charges balance, and the strength is the one of the ions.
            var phStep = (-at.ChargeExcess * at.StrengthByStrength + at.StrengthExcess * at.ChargeByStrength) / at.Determinant;
            var strengthStep = (-at.StrengthExcess * at.ChargeByPh + at.ChargeExcess * at.StrengthByPh) / at.Determinant;
            if (!double.IsFinite(phStep) || at.Determinant >= 0)
            {
                break;
            }
            var cut = Math.Abs(phStep) > 1.5 ? 1.5 / Math.Abs(phStep) : 1;
            ph += cut * phStep;
            var before = strength;
            strength = Math.Max(strength + cut * strengthStep, strength / 10);
            if (ph is < LowestPh or > HighestPh)
            {
                break;
            }
            // The error after a Newton step is of the order of the step squared.
            if (Math.Abs(phStep) < phTolerance && (ideal || Math.Abs(strength - before) < 1e-6 * before))
            {
                return new PhSolution(ph, strength, Converged: true, OutsideRange: ph > HighestPhOfDrinks);
            }
        }
        return SolveBracketed(acidMolesPerLitre, chargeMolesPerLitre, ideal);
    }

    /// <summary>How the pH answers to each acid and to the charge, at a solution.</summary>
    /// <param name="acidMolesPerLitre">Total acids, mol/L, as they were solved.</param>
    /// <param name="chargeMolesPerLitre">Strong-ion difference, mol/L, as it was solved.</param>
    /// <param name="at">What <see cref="Solve"/> gave for them.</param>
    /// <param name="perAcid">Receives pH per mol/L of each acid (<see cref="Components.AcidCount"/> numbers).</param>
    /// <param name="perCharge">pH per mol/L of charge.</param>
    /// <param name="ideal">As it was solved.</param>
    /// <remarks>
    /// Source: implicit derivative of both equations of the solve, so the drift through ionic strength is exact.
    /// Valid for: solutions between the ends of the bracket; zeros at the ends. Error: none beyond the model's.
    /// </remarks>
    /// <exception cref="ArgumentException">A span is not one number per acid.</exception>
    public static void Sensitivity(
        ReadOnlySpan<double> acidMolesPerLitre,
        double chargeMolesPerLitre,
        PhSolution at,
        Span<double> perAcid,
        out double perCharge,
        bool ideal = false)
    {
        CheckAcids(acidMolesPerLitre);
        if (perAcid.Length != Components.AcidCount)
        {
            throw new ArgumentException($"There are {Components.AcidCount} acids.", nameof(perAcid));
        }
        if (at.Ph is <= LowestPh or >= HighestPh)
        {
            perAcid.Clear();
            perCharge = 0;
            return;
        }
        var balance = new Balance(acidMolesPerLitre, chargeMolesPerLitre, at.Ph, at.IonicStrength, ideal);
        var powers = new Powers(at.Ph, ideal ? 0 : Davies(at.IonicStrength, out _));
        for (var a = 0; a < perAcid.Length; a++)
        {
            var moments = new Moments(a, powers);
            perAcid[a] = (balance.StrengthByStrength * moments.First - balance.ChargeByStrength * moments.Second / 2) / balance.Determinant;
        }
        perCharge = -(balance.StrengthByStrength + balance.ChargeByStrength * Math.Sign(chargeMolesPerLitre) / 2) / balance.Determinant;
    }

    // The safe way: at a fixed ionic strength the charges balance at one pH only, since the excess falls all the way.
    // Internal, since random liquids hardly ever come here and its tests must.
    internal static PhSolution SolveBracketed(ReadOnlySpan<double> acids, double charge, bool ideal)
    {
        var strength = 0.02 + 0.5 * Math.Abs(charge);
        var ph = 3.0;
        for (var round = 0; round < 200; round++)
        {
            var (next, atEnd) = BalanceAt(acids, charge, strength, ideal);
            var at = new Balance(acids, charge, next, strength, ideal);
            var renewed = strength - at.StrengthExcess;
            var rest = Math.Abs(next - ph) < 1e-10 && Math.Abs(renewed - strength) < 1e-10;
            ph = next;
            if (rest || ideal)
            {
                return new PhSolution(ph, renewed, Converged: true, OutsideRange: atEnd || ph > HighestPhOfDrinks);
            }
            strength = (strength + renewed) / 2;
        }
        return new PhSolution(ph, strength, Converged: false, OutsideRange: ph > HighestPhOfDrinks);
    }

    // Newton on pH that falls back on halving the bracket; the second value says that no balance lies within it.
    private static (double Ph, bool AtEnd) BalanceAt(ReadOnlySpan<double> acids, double charge, double strength, bool ideal)
    {
        if (new Balance(acids, charge, LowestPh, strength, ideal).ChargeExcess <= 0)
        {
            return (LowestPh, true);
        }
        if (new Balance(acids, charge, HighestPh, strength, ideal).ChargeExcess >= 0)
        {
            return (HighestPh, true);
        }
        var low = LowestPh;
        var high = HighestPh;
        var ph = 3.0;
        for (var step = 0; step < 200; step++)
        {
            var at = new Balance(acids, charge, ph, strength, ideal);
            if (at.ChargeExcess > 0)
            {
                low = ph;
            }
            else
            {
                high = ph;
            }
            var next = ph - at.ChargeExcess / at.ChargeByPh;
            // Every fourth step halves: Newton alone can crawl along a flat stretch without leaving the bracket.
            if (!(next > low && next < high) || step % 4 == 3)
            {
                next = (low + high) / 2;
            }
            if (Math.Abs(next - ph) < 1e-12 || high - low < 1e-12)
            {
                return (next, false);
            }
            ph = next;
        }
        return (ph, false);
    }

    private static void CheckAcids(ReadOnlySpan<double> acids, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(acids))] string? name = null)
    {
        if (acids.Length != Components.AcidCount)
        {
            throw new ArgumentException($"There are {Components.AcidCount} acids.", name);
        }
        foreach (var moles in acids)
        {
            Guard.FiniteNonNegative(moles, name);
        }
    }

    private static int IndexOf(Component acid) =>
        acid.IsAcid() ? acid - Components.FirstAcid : throw new ArgumentOutOfRangeException(nameof(acid), acid, "Not an acid.");

    private static double Davies(double ionicStrength, out double slope)
    {
        if (ionicStrength >= DaviesCap)
        {
            slope = 0;
            return DaviesAtCap;
        }
        var root = Math.Sqrt(ionicStrength);
        slope = DaviesA * (0.5 / (root * (1 + root) * (1 + root)) - 0.3);
        return DaviesA * (root / (1 + root) - 0.3 * ionicStrength);
    }

    private static readonly double DaviesAtCap = DaviesA * (Math.Sqrt(DaviesCap) / (1 + Math.Sqrt(DaviesCap)) - 0.3 * DaviesCap);

    private static double[] MakeProducts()
    {
        var products = new double[Pk.Length];
        for (var a = 0; a < Components.AcidCount; a++)
        {
            var product = 1.0;
            for (var i = 0; i < 3; i++)
            {
                product *= Math.Pow(10, -Pk[3 * a + i]);
                products[3 * a + i] = product;
            }
        }
        return products;
    }

    private static double[] MakeChargesAtEndPoint()
    {
        var charges = new double[Components.AcidCount];
        for (var a = 0; a < charges.Length - 1; a++)
        {
            charges[a] = new Moments(a, new Powers(EndPoint, 0)).First;
        }
        return charges;
    }

    // What the pH and the Davies term do to ions of one, two and three charges; two exponentials serve all acids.
    private readonly struct Powers
    {
        public readonly double Hydrogen;
        public readonly double Hydroxide;
        public readonly double One;
        public readonly double Two;
        public readonly double Three;

        public Powers(double ph, double d)
        {
            var h = Math.Exp(-Ln10 * ph);
            var e = Math.Exp(Ln10 * d);
            Hydrogen = h * e;
            Hydroxide = WaterProduct * e / h;
            One = e / h;
            var e2 = e * e;
            Two = One * One * e2;
            Three = Two * One * e2 * e2;
        }

        private static readonly double WaterProduct = Math.Pow(10, -WaterPk);
    }

    // Mean of i, i^2, i^3 and i^4 over the species of one acid, i the number of protons gone.
    private readonly struct Moments
    {
        public readonly double First;
        public readonly double Second;
        public readonly double Third;
        public readonly double Fourth;

        public Moments(int acid, in Powers powers)
        {
            var products = Products;
            var one = products[3 * acid] * powers.One;
            var two = products[3 * acid + 1] * powers.Two;
            var three = products[3 * acid + 2] * powers.Three;
            var share = 1 / (1 + one + two + three);
            First = (one + 2 * two + 3 * three) * share;
            Second = (one + 4 * two + 9 * three) * share;
            Third = (one + 8 * two + 27 * three) * share;
            Fourth = (one + 16 * two + 81 * three) * share;
        }
    }

    // Both equations and their derivatives at a pH and an ionic strength.
    private readonly struct Balance
    {
        public readonly double ChargeExcess;
        public readonly double StrengthExcess;
        public readonly double ChargeByPh;
        public readonly double ChargeByStrength;
        public readonly double StrengthByPh;
        public readonly double StrengthByStrength;

        public Balance(ReadOnlySpan<double> acids, double charge, double ph, double strength, bool ideal)
        {
            var slope = 0.0;
            var d = ideal ? 0 : Davies(strength, out slope);
            var powers = new Powers(ph, d);
            double ions = 0, squares = 0, spread = 0, skew = 0, breadth = 0;
            for (var a = 0; a < acids.Length; a++)
            {
                var moles = acids[a];
                if (moles == 0)
                {
                    continue;
                }
                var m = new Moments(a, powers);
                ions += moles * m.First;
                squares += moles * m.Second;
                spread += moles * (m.Second - m.First * m.First);
                skew += moles * (m.Third - m.First * m.Second);
                breadth += moles * (m.Fourth - m.Second * m.Second);
            }
            var h = powers.Hydrogen;
            var oh = powers.Hydroxide;
            ChargeExcess = charge + h - oh - ions;
            StrengthExcess = strength - 0.5 * (Math.Abs(charge) + h + oh + squares);
            ChargeByPh = -Ln10 * (h + oh + spread);
            ChargeByStrength = Ln10 * (h - oh - skew) * slope;
            StrengthByPh = 0.5 * Ln10 * (h - oh - skew);
            StrengthByStrength = 1 - 0.5 * Ln10 * (h + oh + breadth) * slope;
        }

        public double Determinant => ChargeByPh * StrengthByStrength - ChargeByStrength * StrengthByPh;
    }
}
