namespace MenuLab.Core.Solutions;

/// <summary>How a liquid meets ice.</summary>
/// <param name="IceGrams">Mass of the ice, g, the water on its surface included; 0 for no ice.</param>
/// <param name="IceCelsius">Temperature of the ice, °C, 0 or below.</param>
/// <param name="SurfaceWaterFraction">Share of the ice's mass that is water on its surface, 0 to 1; it joins the drink without melting.</param>
/// <param name="VesselJoulesPerKelvin">Heat capacity of the vessel that takes part, J/K.</param>
/// <param name="VesselCelsius">Temperature of the vessel at the start, °C.</param>
/// <param name="AmbientJoules">Heat that comes in from hands and air, J.</param>
/// <param name="ApproachKelvin">How far above its freezing point the liquid ends, K.</param>
/// <param name="CapAtStart">The liquid never ends warmer than it started (stirring).</param>
public readonly record struct IceSettings(
    double IceGrams,
    double IceCelsius,
    double SurfaceWaterFraction,
    double VesselJoulesPerKelvin,
    double VesselCelsius,
    double AmbientJoules,
    double ApproachKelvin,
    bool CapAtStart);

/// <summary>What ice did to a liquid.</summary>
/// <param name="MeltedGrams">Ice that melted, g.</param>
/// <param name="AddedWaterGrams">Water that joined the liquid, g: melted ice and surface water.</param>
/// <param name="Celsius">Temperature at the end, °C.</param>
/// <param name="IceLeftGrams">Ice that is left, g.</param>
/// <param name="AllMelted">There was ice and none is left.</param>
/// <param name="Converged">The solve came to rest. When false, the figures are the best that was found.</param>
public readonly record struct Chilled(
    double MeltedGrams, double AddedWaterGrams, double Celsius, double IceLeftGrams, bool AllMelted, bool Converged);

/// <summary>Chilling with ice: a heat balance that gives dilution and temperature together.</summary>
/// <remarks>
/// Constants: heat of fusion 333.55 J/g, ice 2.06 and water 4.20 J/(g K); liquid: ethanol and water by mass fraction (MEMORY, 2 %), everything
/// dissolved 1.30 J/(g K); heat of mixing of ethanol and water (MEMORY, 15 %, crude above 60 % vol). Freezing of the drink's own water
/// onto very cold ice is not modelled.
/// </remarks>
public static class Ice
{
    private const double Fusion = 333.55;
    private const double IceHeat = 2.06;
    private const double WaterHeat = 4.20;
    private const double DissolvedHeat = 1.30;

    /// <summary>Dilution and temperature of a liquid after ice.</summary>
    /// <param name="liquid">The liquid as poured.</param>
    /// <param name="startCelsius">Its temperature, °C.</param>
    /// <param name="settings">The ice, the vessel and the method.</param>
    /// <returns>What melted, what joined the liquid, and the temperature.</returns>
    /// <remarks>
    /// Source: energy conservation with the freezing point of the diluted liquid; secant on the melted mass, held in a bracket, always from
    /// nothing melted. Valid for: drinks to about 35 % vol and 40 Brix at the end. Where heat for melting is lacking nothing melts and the liquid
    /// is held at its freezing point plus the approach (or at its start, if that is colder): there the balance does not close.
    /// Error: dilution 0.05 of the start volume (k = 1) shaken, 0.06 stirred, 0.08 built or crushed, from the settings.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A setting that is not finite, negative where it cannot be, ice above 0 °C, a fraction outside 0 to 1.</exception>
    public static Chilled Chill(Liquid liquid, double startCelsius, in IceSettings settings)
    {
        Span<Norrish.Solute> solutes = stackalloc Norrish.Solute[Norrish.MostSolutes];
        var bath = new Bath(liquid, startCelsius, settings, solutes);
        if (settings.IceGrams == 0)
        {
            // Without ice there is no approach; the liquid is only kept from freezing.
            var cooled = Math.Max(bath.BalancedCelsius(0), Math.Min(bath.FreezingCelsius(0), startCelsius));
            return new Chilled(0, 0, cooled, 0, AllMelted: false, Converged: true);
        }

        var excess = bath.Excess(0, out var celsius);
        if (excess <= 0)
        {
            var held = Math.Max(bath.BalancedCelsius(0), Math.Min(celsius, startCelsius));
            return new Chilled(0, bath.SurfaceWater, held, bath.DryIce, AllMelted: false, Converged: true);
        }

        // The balance is close to a straight line of slope -(heat to melt a gram), so the secant from there needs five or six points.
        var low = 0.0;
        var high = bath.DryIce;
        var highKnown = false;
        var previous = 0.0;
        var previousExcess = excess;
        var melted = Math.Min(excess / Fusion, bath.DryIce);
        for (var step = 0; step < 60; step++)
        {
            excess = bath.Excess(melted, out celsius);
            if (excess > 0)
            {
                if (melted >= bath.DryIce)
                {
                    return new Chilled(
                        bath.DryIce, bath.DryIce + bath.SurfaceWater, bath.BalancedCelsius(bath.DryIce), 0, AllMelted: true, Converged: true);
                }
                low = melted;
            }
            else
            {
                high = melted;
                highKnown = true;
            }
            var next = melted - excess * (melted - previous) / (excess - previousExcess);
            if (!(next > low && next < high))
            {
                // Past all the ice: look there first, since it may all melt. Else halve what is left.
                next = next >= high && !highKnown ? bath.DryIce : (low + high) / 2;
            }
            if (Math.Abs(next - melted) < 1e-9)
            {
                return new Chilled(next, next + bath.SurfaceWater, celsius, bath.DryIce - next, AllMelted: false, Converged: true);
            }
            previous = melted;
            previousExcess = excess;
            melted = next;
        }
        return new Chilled(melted, melted + bath.SurfaceWater, celsius, bath.DryIce - melted, AllMelted: false, Converged: false);
    }

    /// <summary>Heat left over when so much ice has melted and the liquid has come to its freezing point plus the approach.</summary>
    /// <param name="liquid">The liquid as poured.</param>
    /// <param name="startCelsius">Its temperature, °C.</param>
    /// <param name="settings">The ice, the vessel and the method.</param>
    /// <param name="meltedGrams">Ice melted, g, from 0 to all of it.</param>
    /// <returns>J; falls as more melts and is zero at the answer of <see cref="Chill"/> unless all or nothing melts.</returns>
    /// <remarks>Source, range and error: those of <see cref="Chill"/>. Meant for implicit derivatives.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="Chill"/>, or a melted mass that is negative or not finite.</exception>
    public static double HeatBalance(Liquid liquid, double startCelsius, in IceSettings settings, double meltedGrams)
    {
        Span<Norrish.Solute> solutes = stackalloc Norrish.Solute[Norrish.MostSolutes];
        return new Bath(liquid, startCelsius, settings, solutes).Excess(Guard.FiniteNonNegative(meltedGrams), out _);
    }

    /// <summary>Heat that has to come from somewhere for a liquid to end at a temperature with so much ice melted.</summary>
    /// <param name="liquid">The liquid as poured.</param>
    /// <param name="startCelsius">Its temperature, °C.</param>
    /// <param name="settings">The ice, the vessel and the method.</param>
    /// <param name="meltedGrams">Ice melted, g.</param>
    /// <param name="celsius">Temperature at the end, °C.</param>
    /// <returns>J left over: zero when energy closes, positive when the end could be warmer.</returns>
    /// <remarks>Source, range and error: those of <see cref="Chill"/>. With all ice melted, this is the balance that gave the temperature.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="HeatBalance"/>.</exception>
    public static double HeatLeftOver(Liquid liquid, double startCelsius, in IceSettings settings, double meltedGrams, double celsius)
    {
        Span<Norrish.Solute> solutes = stackalloc Norrish.Solute[Norrish.MostSolutes];
        var bath = new Bath(liquid, startCelsius, settings, solutes);
        return bath.HeatAtZero(Guard.FiniteNonNegative(meltedGrams)) - bath.HeatPerKelvin(meltedGrams) * Guard.Finite(celsius);
    }

    /// <summary>Heat capacity of ethanol and water.</summary>
    /// <param name="massFraction">Grams of ethanol per gram of ethanol and water, 0 to 1.</param>
    /// <returns>J/(g K).</returns>
    /// <remarks>Source: MEMORY, linear between eight points. Valid for: near 10 °C. Error: 2 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static double HeatCapacity(double massFraction) => Interpolate(HeatFractions, Heats, Guard.InRange(massFraction, 0, 1));

    /// <summary>Heat of mixing of ethanol and water; negative, since mixing them warms.</summary>
    /// <param name="ethanolMoleFraction">Moles of ethanol per mole of ethanol and water, 0 to 1.</param>
    /// <returns>J per mole of both together.</returns>
    /// <remarks>Source: MEMORY, linear between eight points, straight to zero above 0.30. Valid for: to 0.30 (60 % vol). Error: 15 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public static double HeatOfMixing(double ethanolMoleFraction) =>
        Interpolate(MixingFractions, MixingHeats, Guard.InRange(ethanolMoleFraction, 0, 1));

    // Arrays for the reason given at the ethanol density.
    private static readonly double[] HeatFractions = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 1];
    private static readonly double[] Heats = [4.18, 4.27, 4.31, 4.22, 4.03, 3.80, 3.50, 2.44];
    private static readonly double[] MixingFractions = [0, 0.02, 0.05, 0.10, 0.15, 0.20, 0.30, 1];
    private static readonly double[] MixingHeats = [0, -175, -404, -656, -769, -782, -699, 0];

    private static double Interpolate(double[] at, double[] values, double x)
    {
        var i = 1;
        while (i < at.Length - 1 && x > at[i])
        {
            i++;
        }
        return values[i - 1] + (x - at[i - 1]) / (at[i] - at[i - 1]) * (values[i] - values[i - 1]);
    }

    // What does not change while the melted mass is looked for.
    private readonly ref struct Bath
    {
        private readonly ReadOnlySpan<Norrish.Solute> _solutes;
        private readonly double _water;
        private readonly double _ethanolMoles;
        private readonly double _start;
        private readonly double _liquidHeat;
        private readonly double _heatAtZero;
        private readonly double _iceCelsius;
        private readonly double _approach;
        private readonly double _vessel;
        private readonly bool _cap;

        public Bath(Liquid liquid, double startCelsius, in IceSettings settings, Span<Norrish.Solute> solutes)
        {
            Check(startCelsius, settings);
            _solutes = solutes[..Norrish.List(liquid, Freezing.EthanolInTheCold, withSalt: true, solutes)];
            _water = liquid[Component.Water];
            _ethanolMoles = liquid[Component.Ethanol] / Norrish.EthanolGramsPerMole;
            _start = startCelsius;
            SurfaceWater = settings.IceGrams * settings.SurfaceWaterFraction;
            DryIce = settings.IceGrams - SurfaceWater;
            _iceCelsius = settings.IceCelsius;
            _approach = settings.ApproachKelvin;
            _vessel = settings.VesselJoulesPerKelvin;
            _cap = settings.CapAtStart;

            var solvent = _water + liquid[Component.Ethanol];
            var dissolved = liquid.Grams - solvent;
            _liquidHeat = dissolved * DissolvedHeat;
            if (solvent > 0)
            {
                _liquidHeat += solvent * Interpolate(HeatFractions, Heats, liquid[Component.Ethanol] / solvent);
            }
            _heatAtZero = _liquidHeat * startCelsius + _vessel * settings.VesselCelsius + settings.AmbientJoules + Mixing(_water);
        }

        public double SurfaceWater { get; }

        public double DryIce { get; }

        public double FreezingCelsius(double melted) => Freezing.PointCelsius(_solutes, _water + melted + SurfaceWater);

        // The balance of docs/science.md, section 7, with the temperature that goes with it.
        public double Excess(double melted, out double celsius)
        {
            celsius = FreezingCelsius(melted) + _approach;
            if (_cap && celsius > _start)
            {
                celsius = _start;
            }
            return HeatAtZero(melted) - HeatPerKelvin(melted) * celsius;
        }

        // The temperature at which energy closes with so much melted.
        public double BalancedCelsius(double melted)
        {
            var perKelvin = HeatPerKelvin(melted);
            return perKelvin > 0 ? HeatAtZero(melted) / perKelvin : _start;
        }

        // Heat that is left over if everything ends at 0 °C.
        public double HeatAtZero(double melted) =>
            _heatAtZero - Mixing(_water + melted + SurfaceWater) - melted * (Fusion - IceHeat * _iceCelsius) + (DryIce - melted) * IceHeat * _iceCelsius;

        // Heat that it takes to end one degree warmer.
        public double HeatPerKelvin(double melted) =>
            _liquidHeat + _vessel + (SurfaceWater + melted) * WaterHeat + (DryIce - melted) * IceHeat;

        private double Mixing(double water)
        {
            if (_ethanolMoles <= 0)
            {
                return 0;
            }
            var moles = _ethanolMoles + water / Norrish.WaterGramsPerMole;
            return moles * Interpolate(MixingFractions, MixingHeats, _ethanolMoles / moles);
        }

        private static void Check(double startCelsius, in IceSettings settings)
        {
            Guard.Finite(startCelsius);
            Guard.FiniteNonNegative(settings.IceGrams);
            Guard.InRange(settings.IceCelsius, -273.15, 0);
            Guard.InRange(settings.SurfaceWaterFraction, 0, 1);
            Guard.FiniteNonNegative(settings.VesselJoulesPerKelvin);
            Guard.Finite(settings.VesselCelsius);
            Guard.Finite(settings.AmbientJoules);
            Guard.FiniteNonNegative(settings.ApproachKelvin);
        }
    }
}
