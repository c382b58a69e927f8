using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

/// <summary>
/// Makes a composition from the figures of an ingredient and the rules of its kind. The order of trust: a reading, the house's figure, the shipped
/// figure, a bound of the kind; what is left is unknown. Mass closes to 1 g, volume to the stated density.
/// </summary>
public static partial class CompositionBuilder
{
    /// <summary>Basis of figures per 100 g.</summary>
    public const string PerMass = "100 g";

    /// <summary>Basis of figures per 100 mL.</summary>
    public const string PerVolume = "100 mL";

    // Sodium chloride that a mass of sodium comes as: 58.443 over 22.990 g/mol.
    private const double SaltPerSodium = 58.443 / 22.990;

    // SR28 rounds each part to 0.01 g and more; 0.5 g is what its mass balances stay within.
    private const double MassTolerance = 0.5;

    // Density and acids depend on each other through "per litre"; each round brings the density some thousand times closer.
    private const int Rounds = 12;

    /// <summary>Builds a composition.</summary>
    /// <param name="kind">Sort of ingredient, for what nobody has measured.</param>
    /// <param name="basis">What the figures are per: "100 g" or "100 mL".</param>
    /// <param name="figures">Its figures; where a quantity has several, a reading counts before the house's, and that before the shipped.</param>
    /// <param name="allergens">Its allergens, carried along.</param>
    /// <param name="flags">What else is known to hold: carbonated, raw egg.</param>
    /// <returns>The composition with the reason for each component and remarks on the record.</returns>
    /// <remarks>
    /// Source: the figures' own; acidity by the charge balance of <see cref="AcidBase"/> (titration and pH, titration alone, pH alone, as composed);
    /// uncertainties by <see cref="KindRules"/> where the figures state none. Valid for: anything that goes into a drink; dry goods get the density of
    /// their solids. Error: that of the figures, told in the spreads.
    /// </remarks>
    /// <exception cref="ArgumentException">An unknown basis or quantity, a figure that is negative, infinite or outside its own bounds.</exception>
    public static BuiltComposition Build(
        IngredientKind kind, string basis, IReadOnlyList<IngredientFigure> figures, AllergenSet allergens, CompositionCaveats flags = CompositionCaveats.None)
    {
        if (basis is not (PerMass or PerVolume))
        {
            throw new ArgumentException($"Figures stand per {PerMass} or per {PerVolume}, not per {basis}.", nameof(basis));
        }
        var facts = new FigureTable(figures);
        var rules = KindRules.Of(kind);
        var density = facts.Find(FigureQuantities.Density);
        var work = Compose(kind, rules, facts, basis, density?.Value ?? 1, density is null);
        work.Caveats |= flags;
        if (work.Vector[(int)Component.Carbonic] > 0 && kind == IngredientKind.Carbonated)
        {
            work.Caveats |= CompositionCaveats.Carbonated;
        }

        var perGram = work.Vector;
        for (var i = 0; i < perGram.Length; i++)
        {
            perGram[i] /= work.TotalGrams;
        }
        if (density is { } stated)
        {
            perGram[(int)Component.Residual] = 1 / stated.Value - Density.Millilitres(new Liquid(perGram));
            work.Reasons[(int)Component.Residual] = FigureQuantities.Density;
        }
        else
        {
            work.Caveats |= CompositionCaveats.DensityEstimated;
            work.Reasons[(int)Component.Residual] = "no stated density: the model's own";
        }

        var spreads = Spreads(work, facts, rules, kind, density);
        var composition = new Composition(
            perGram, work.Known, spreads, allergens, work.Caveats, rules.SugarAcidCorrelation);
        return new BuiltComposition(composition, work.Reasons, work.Remarks);
    }

    private static Work Compose(IngredientKind kind, KindRules rules, FigureTable facts, string basis, double gramsPerMillilitre, bool solveDensity)
    {
        var work = ComposeAt(kind, rules, facts, basis, gramsPerMillilitre);
        for (var round = 0; solveDensity && round < Rounds; round++)
        {
            var next = work.TotalGrams / Density.Millilitres(new Liquid(work.Vector));
            if (Math.Abs(next - gramsPerMillilitre) < 1e-12)
            {
                break;
            }
            gramsPerMillilitre = next;
            work = ComposeAt(kind, rules, facts, basis, gramsPerMillilitre);
        }
        return work;
    }

    private static Work ComposeAt(IngredientKind kind, KindRules rules, FigureTable facts, string basis, double gramsPerMillilitre)
    {
        var work = new Work(basis == PerVolume, gramsPerMillilitre);
        Plain(work, facts, rules);
        Traces(work, facts, rules);
        Acids(work, facts, rules, kind);
        CarbonDioxide(work, facts, rules, kind);
        Sugars(work, facts, rules);
        OtherCarbohydrate(work, facts, rules);
        Close(work, facts, rules);
        return work;
    }

    private static void Plain(Work work, FigureTable facts, KindRules rules)
    {
        foreach (var (quantity, component) in FigureQuantities.Plain)
        {
            if (facts.Find(quantity) is { } stated)
            {
                work.Set(component, stated.Value, quantity);
                if (component == Component.Ethanol)
                {
                    work.EthanolUncertainty = stated.Uncertainty;
                }
            }
            else
            {
                Bound(work, rules, component);
            }
        }
        if (facts.Find(FigureQuantities.Charge) is not null)
        {
            work.Set(Component.Salt, 0, "sodium counts in the stated strong-ion difference");
        }
        else if (facts.Find(FigureQuantities.Sodium) is { } sodium)
        {
            // No record has chloride: sodium is taken as salt, whose charges balance. Exact for salt, small for fruit.
            work.Set(Component.Salt, sodium.Value / 1000 * SaltPerSodium, FigureQuantities.Sodium);
        }
        else
        {
            Bound(work, rules, Component.Salt);
        }
    }

    private static void Traces(Work work, FigureTable facts, KindRules rules)
    {
        if (facts.Find(FigureQuantities.Caffeine) is { } caffeine)
        {
            work.Set(Component.Caffeine, caffeine.Value, FigureQuantities.Caffeine);
            work.CaffeineUncertainty = caffeine.Uncertainty;
        }
        else
        {
            Bound(work, rules, Component.Caffeine);
        }

        // A range of such drinks says more than the ceiling of the law, which is no value of its own.
        var quinine = facts.Find(FigureQuantities.Quinine);
        var range = facts.Find(FigureQuantities.QuininePerLitre);
        if (quinine is { HasOwnValue: true } || (quinine is not null && range is null))
        {
            work.Set(Component.Quinine, quinine.Value.Value, FigureQuantities.Quinine);
            work.QuinineUncertainty = quinine.Value.Uncertainty;
        }
        else if (range is { } perLitre)
        {
            work.Set(Component.Quinine, perLitre.Value * work.Litres, FigureQuantities.QuininePerLitre);
            work.QuinineUncertainty = perLitre.Uncertainty * work.Litres;
        }
        else
        {
            Bound(work, rules, Component.Quinine);
        }
        Bound(work, rules, Component.Bitter);
        Bound(work, rules, Component.Tannin);
    }

    private static void CarbonDioxide(Work work, FigureTable facts, KindRules rules, IngredientKind kind)
    {
        var moles = 0.0;
        var reason = "not charged with gas (kind)";
        if (facts.Find(FigureQuantities.Carbonic) is { } stated)
        {
            moles += stated.Value / 1000;
            reason = FigureQuantities.Carbonic;
        }
        if (facts.Find(FigureQuantities.CarbonDioxideVolumes) is { } volumes)
        {
            work.GasGrams = volumes.Value * MolesPerLitreAndVolume * work.Litres * Components.GramsPerUnit(Component.Carbonic);
            moles += volumes.Value * MolesPerLitreAndVolume * work.Litres;
            reason = FigureQuantities.CarbonDioxideVolumes;
        }
        else if (kind == IngredientKind.Carbonated)
        {
            return;
        }
        var charge = work[Component.Charge];
        if (rules.MineralsAreBicarbonate && charge > 0 && !work.HasSourAcid)
        {
            moles += charge;
            reason = reason == FigureQuantities.CarbonDioxideVolumes ? reason : "minerals of water stand as bicarbonate (kind)";
        }
        work.Set(Component.Carbonic, moles, reason);
    }

    // Real gas at 0 °C and 1 atm: 22.26 L/mol.
    private const double MolesPerLitreAndVolume = 1 / 22.26;

    private static void Sugars(Work work, FigureTable facts, KindRules rules)
    {
        var named = 0.0;
        foreach (var (quantity, component) in FigureQuantities.Sugars)
        {
            if (facts.Find(quantity) is { } stated)
            {
                work.Set(component, stated.Value, quantity);
                named += stated.Value;
            }
        }
        var total = facts.Find(FigureQuantities.TotalSugars);
        if (total is { } all)
        {
            var rest = Math.Max(0, all.Value - named);
            work.Set(Component.SugarNotToldApart, rest, FigureQuantities.TotalSugars);
            work.SugarUncertainty = all.Uncertainty;
            if (rest <= Math.Max(0.1, 0.02 * all.Value))
            {
                NoOtherSugars(work, "the sugars named make up the total");
            }
            return;
        }
        if (named > 0)
        {
            work.Set(Component.SugarNotToldApart, 0, "no total: the sugars named are taken as all");
            NoOtherSugars(work, "no total: the sugars named are taken as all");
            return;
        }

        var (low, high) = rules.SugarShareOfSolids;
        if (!double.IsNaN(low) && SolidsBesideAcid(work, facts) is { } solids)
        {
            work.Set(Component.SugarNotToldApart, solids.Value * (low + high) / 2, solids.Reason);
            var ofShare = solids.Value * (high - low) / Stated.BoundsInUncertainties;
            var ofSolids = solids.Uncertainty * (low + high) / 2;
            work.SugarUncertainty = Math.Sqrt(ofShare * ofShare + ofSolids * ofSolids);
            work.SolidsLeft = solids.Value - work[Component.SugarNotToldApart];
            return;
        }
        if (Bound(work, rules, Component.SugarNotToldApart))
        {
            NoOtherSugars(work, "at most a trace (kind)");
        }
    }

    private static (double Value, double Uncertainty, string Reason)? SolidsBesideAcid(Work work, FigureTable facts)
    {
        var acid = work.AcidGrams;
        if (facts.Find(FigureQuantities.Carbohydrate) is { } carbohydrate)
        {
            return (Math.Max(0, carbohydrate.Value - work[Component.Fibre] - acid), 0, "share of the carbohydrate beside fibre and acid (kind)");
        }
        if (facts.Find(FigureQuantities.Brix) is { Status: not FigureStatus.Computed } brix)
        {
            var grams = work.PerVolume ? work.GramsPerMillilitre : 1;
            var uncertainty = double.IsNaN(brix.Uncertainty) ? 0 : brix.Uncertainty;
            return (Math.Max(0, brix.Value * grams - acid), uncertainty * grams, "share of the Brix beside acid (kind)");
        }
        return null;
    }

    private static void NoOtherSugars(Work work, string reason)
    {
        foreach (var (_, component) in FigureQuantities.Sugars)
        {
            if (!work.Knows(component))
            {
                work.Set(component, 0, reason);
            }
        }
    }

    private static void OtherCarbohydrate(Work work, FigureTable facts, KindRules rules)
    {
        var stated = facts.Find(FigureQuantities.OtherCarbohydrate);
        var carbohydrate = facts.Find(FigureQuantities.Carbohydrate);
        if (carbohydrate is not null && (stated is null || work.AcidFromTitration))
        {
            // By difference, it holds the acid too; a stated remainder left out only the acids that the record names.
            var rest = carbohydrate.Value.Value - work.SugarGrams - work[Component.Fibre] - work.AcidGrams;
            work.Set(Component.OtherCarbohydrate, Math.Max(0, rest), "carbohydrate less sugars, fibre and acid");
        }
        else if (stated is not null)
        {
            work.Set(Component.OtherCarbohydrate, stated.Value.Value, FigureQuantities.OtherCarbohydrate);
        }
        else if (work.SolidsLeft > 0)
        {
            work.Set(Component.OtherCarbohydrate, work.SolidsLeft, "soluble solids less sugars and acid");
        }
        else
        {
            Bound(work, rules, Component.OtherCarbohydrate);
        }
    }

    /// <summary>Makes the parts add up: other solids take what is left, or water; where the parts exceed the whole, they give way in that order.</summary>
    private static void Close(Work work, FigureTable facts, KindRules rules)
    {
        var parts = work.GramsButWater;
        if (facts.Find(FigureQuantities.Water) is { } water)
        {
            work.WaterIsStated = true;
            // The record of a carbonated drink is that of the flat one.
            var left = work.TotalGrams - water.Value - (parts - work.GasGrams);
            var shortage = Math.Max(0, -left);
            var fromCarbohydrate = Math.Min(shortage, work[Component.OtherCarbohydrate]);
            work.Vector[(int)Component.OtherCarbohydrate] -= fromCarbohydrate;
            work.Set(Component.OtherSolids, Math.Max(0, left), "what no other figure names, by difference");
            work.Set(Component.Water, Math.Max(0, work.TotalGrams - work.GramsButWater), FigureQuantities.Water);
            Overstated(work, shortage - fromCarbohydrate);
        }
        else
        {
            if (facts.Find(FigureQuantities.Ash) is { } ash)
            {
                work.Set(Component.OtherSolids, Math.Max(0, ash.Value - work[Component.Salt]), FigureQuantities.Ash);
            }
            else
            {
                Bound(work, rules, Component.OtherSolids);
            }
            work.Set(Component.Water, Math.Max(0, work.TotalGrams - work.GramsButWater), "by difference");
        }

        // Parts above the whole without any water left to give: they stand in their proportions.
        var excess = work.GramsButWater + work[Component.Water] - work.TotalGrams;
        if (excess > 1e-12)
        {
            Overstated(work, excess);
            var scale = work.TotalGrams / (work.TotalGrams + excess);
            for (var i = 0; i < work.Vector.Length; i++)
            {
                work.Vector[i] *= scale;
            }
        }
    }

    private static void Overstated(Work work, double grams)
    {
        if (grams > MassTolerance)
        {
            work.Caveats |= CompositionCaveats.MassOverstated;
            work.Remarks.Add(new CompositionRemark(
                CompositionTopic.Mass, work.TotalGrams + grams, work.TotalGrams,
                string.Create(CultureInfo.InvariantCulture, $"The parts add up to {grams:0.0} g more than the whole; the excess was taken off.")));
        }
    }

    /// <summary>Takes the kind's bound for a component that no figure states; false where the kind leaves it open.</summary>
    private static bool Bound(Work work, KindRules rules, Component component)
    {
        foreach (var bound in rules.Bounds)
        {
            if (bound.Component == component)
            {
                work.Set(component, 0, bound.HighGrams == 0 ? "none (kind)" : "at most a trace (kind)");
                work.Highest[(int)component] = bound.HighGrams;
                return true;
            }
        }
        return false;
    }

    /// <summary>A composition in the making: amounts per 100 g or 100 mL of the ingredient.</summary>
    private sealed class Work(bool perVolume, double gramsPerMillilitre)
    {
        public readonly double[] Vector = new double[Components.Count];
        public readonly double[] Highest = new double[Components.Count];
        public readonly string[] Reasons = NoReasons();
        public readonly List<CompositionRemark> Remarks = [];
        public CompositionCaveats Caveats;
        public AcidAccount Account = AcidAccount.Open;
        public double EthanolUncertainty = double.NaN;
        public double SugarUncertainty = double.NaN;
        public double CaffeineUncertainty = double.NaN;
        public double QuinineUncertainty = double.NaN;
        public double SolidsLeft;
        public bool WaterIsStated;
        public double GasGrams;

        public bool PerVolume => perVolume;

        public double GramsPerMillilitre => gramsPerMillilitre;

        /// <summary>Mass that the figures are of.</summary>
        public double TotalGrams => perVolume ? 100 * gramsPerMillilitre : 100;

        /// <summary>Volume that the figures are of, L.</summary>
        public double Litres => perVolume ? 0.1 : 0.1 / gramsPerMillilitre;

        public double this[Component component] => Vector[(int)component];

        public bool Knows(Component component) => Reasons[(int)component].Length > 0;

        public void Set(Component component, double amount, string reason)
        {
            Vector[(int)component] = amount;
            Reasons[(int)component] = reason;
        }

        public double Grams(Component component) => Vector[(int)component] * Components.GramsPerUnit(component);

        public double GramsButWater
        {
            get
            {
                var sum = 0.0;
                for (var i = (int)Component.Water + 1; i < Components.Count; i++)
                {
                    sum += Grams((Component)i);
                }
                return sum;
            }
        }

        public double SugarGrams
        {
            get
            {
                var sum = 0.0;
                for (var c = Component.Sucrose; c <= Component.SugarNotToldApart; c++)
                {
                    sum += this[c];
                }
                return sum;
            }
        }

        /// <summary>All acids but carbonic, g.</summary>
        public double AcidGrams
        {
            get
            {
                var sum = 0.0;
                for (var c = Components.FirstAcid; c < Components.LastAcid; c++)
                {
                    sum += Grams(c);
                }
                return sum;
            }
        }

        /// <summary>There is acid beside vitamin C and carbon dioxide.</summary>
        public bool HasSourAcid => AcidGrams - Grams(Component.Ascorbic) > 0;

        /// <summary>The acids follow a titration, so that the record's carbohydrate still holds its own.</summary>
        public bool AcidFromTitration => Account.Basis is AcidBasis.Titration or AcidBasis.TitrationAndPh;

        public ulong Known
        {
            get
            {
                var bits = 0UL;
                for (var i = 0; i < Components.Count; i++)
                {
                    bits |= Reasons[i].Length > 0 ? ((Component)i).Bit() : 0;
                }
                if (Knows(Component.SugarNotToldApart))
                {
                    bits |= Composition.TotalSugarKnown;
                }
                if (Account.Basis != AcidBasis.Unknown)
                {
                    bits |= Composition.TotalAcidKnown;
                }
                // Either the water was told, and with it all that is not water, or each part of the solids was.
                if (WaterIsStated || (Knows(Component.SugarNotToldApart) && Account.Basis != AcidBasis.Unknown && Knows(Component.OtherSolids)))
                {
                    bits |= Composition.SolidsKnown;
                }
                return bits;
            }
        }

        private static string[] NoReasons()
        {
            var reasons = new string[Components.Count];
            Array.Fill(reasons, "");
            return reasons;
        }
    }
}
