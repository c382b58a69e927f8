using System.Globalization;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

public static partial class CompositionBuilder
{
    // A range in print is of samples, not of this bottle; a single value in print is worth about as much.
    private const double PrintedPhUncertainty = 0.15;
    private const double MeasuredPhUncertainty = 0.05;

    // Minerals vary between lots like the rest of the fruit; chloride and bound phosphate are not known at all.
    private const double MineralChargeVariation = 0.15;

    // Below this the salts of a thing are too few to move the pH of a drink: 0.2 mmol of charge per 100 g.
    private const double FewMinerals = 0.0002;

    // A tea as sour as this holds more acid than a tea does by its kind (hibiscus): an open question.
    private const double SourTea = 4.5;

    /// <summary>What the acids of a composition rest on.</summary>
    private enum AcidBasis
    {
        Unknown,
        Traces,
        Composed,
        Ph,
        Titration,
        TitrationAndPh,
    }

    /// <summary>What the spreads need to know of how acids and charge came about.</summary>
    private readonly record struct AcidAccount(AcidBasis Basis, double Ph, double PhUncertainty, double TitrationEquivalentsPerLitre, double AcidVariation)
    {
        public static readonly AcidAccount Open = new(AcidBasis.Unknown, double.NaN, double.NaN, double.NaN, 0);
    }

    /// <summary>Sets the acids (mol) and the strong-ion difference, by the order of trust; an acid that nobody knows stays unknown.</summary>
    private static void Acids(Work work, FigureTable facts, KindRules rules, IngredientKind kind)
    {
        var named = Named(work, facts);
        Acids(work, facts, rules, kind, named);
        for (var acid = Components.FirstAcid; acid < Components.LastAcid; acid++)
        {
            if (IsOpen(acid, work, facts, rules, kind, named))
            {
                work.Set(acid, 0, "");
            }
        }
    }

    private static void Acids(Work work, FigureTable facts, KindRules rules, IngredientKind kind, bool named)
    {
        var titration = facts.Find(FigureQuantities.TitratableAcidity) is { Status: not FigureStatus.Computed } t ? t : (Stated?)null;
        var ph = facts.Find(FigureQuantities.Ph);
        var minerals = MineralCharge(facts);

        var account = AcidAccount.Open with
        {
            Ph = ph?.Value ?? double.NaN,
            PhUncertainty = ph is { } p ? UncertaintyOfPh(p) : double.NaN,
            TitrationEquivalentsPerLitre = titration is { } a
                ? a.Value / AcidBase.EquivalentMass(Component.Citric) / work.Litres
                : double.NaN,
            AcidVariation = VariationOfAcid(facts, rules, titration),
        };

        if (facts.Find(FigureQuantities.Charge) is { } charge)
        {
            // The charge is known of itself (a salt by its formula), so neither pH nor minerals are asked.
            work.Set(Component.Charge, charge.Value / 1000, FigureQuantities.Charge);
            work.Account = account with { Basis = named ? AcidBasis.Composed : AcidBasis.Traces };
            Accept(work, named ? NoneBesideNamed : "none (kind)");
            return;
        }
        if (titration is not null)
        {
            if (!named)
            {
                work.Caveats |= CompositionCaveats.AcidProfileAssumed;
            }
            if (titration.Value.Status is FigureStatus.Memory or FigureStatus.Assumed)
            {
                work.Caveats |= CompositionCaveats.AcidityAssumed;
            }
            if (ph is not null && FromTitrationAndPh(work, rules, account))
            {
                FlagPh(work, ph.Value, rules);
                return;
            }
            FromTitration(work, rules, account, minerals);
            return;
        }
        if (named)
        {
            FromNamedAcids(work, rules, account, ph, minerals);
            return;
        }
        FromKind(work, rules, kind, account, ph, minerals);
    }

    private const string NoneBesideNamed = "none beside the acids named";

    /// <summary>
    /// The share of an acid is open, though the sum of all may be known: one that is usual for the kind and that the record,
    /// naming others, leaves out; or one beside a profile that the kind lends (but for vinegar, which is acetic by definition).
    /// </summary>
    private static bool IsOpen(Component acid, Work work, FigureTable facts, KindRules rules, IngredientKind kind, bool named)
    {
        var isUsual = rules.AcidProfile.Any(p => p.Acid == acid);
        var isStated = FigureQuantities.Acids.Any(a => a.Component == acid && facts.Find(a.Quantity) is not null);
        return named
            ? isUsual && !isStated
            : work.AcidFromTitration && !isUsual && !isStated && kind != IngredientKind.Vinegar;
    }

    /// <summary>Puts the acids that the record names into the vector; true where one says how sour the thing is.</summary>
    private static bool Named(Work work, FigureTable facts)
    {
        var named = false;
        foreach (var (quantity, component) in FigureQuantities.Acids)
        {
            if (facts.Find(quantity) is { } stated)
            {
                work.Set(component, stated.Value / Components.GramsPerUnit(component), quantity);
                named |= component != Component.Ascorbic;
            }
        }
        return named;
    }

    private static bool FromTitrationAndPh(Work work, KindRules rules, AcidAccount account)
    {
        var profile = Profile(work, rules);
        var inferred = account.Ph < AcidBase.EndPoint && account.TitrationEquivalentsPerLitre > 0
            ? AcidBase.InferFrom(account.Ph, account.TitrationEquivalentsPerLitre, profile)
            : default;
        if (!inferred.Converged)
        {
            work.Remarks.Add(new CompositionRemark(
                CompositionTopic.Acidity, account.Ph, account.TitrationEquivalentsPerLitre, "pH and titration contradict each other; the titration counts."));
            return false;
        }
        SetAcids(work, profile, inferred.TotalMolesPerLitre * work.Litres, "titration and pH");
        work.Set(Component.Charge, inferred.ChargeMolesPerLitre * work.Litres, "titration and pH");
        work.Account = account with { Basis = AcidBasis.TitrationAndPh };
        return true;
    }

    private static void FromTitration(Work work, KindRules rules, AcidAccount account, double? minerals)
    {
        // A titration sees the free acid; what the minerals bind comes on top.
        var profile = Profile(work, rules);
        var charge = minerals ?? (double.IsNaN(rules.ChargePerLitre) ? 0 : rules.ChargePerLitre * work.Litres);
        var total = (account.TitrationEquivalentsPerLitre * work.Litres + charge) / ChargeAtEnd(profile);
        SetAcids(work, profile, total, FigureQuantities.TitratableAcidity);
        work.Account = account with { Basis = AcidBasis.Titration };
        SetMineralCharge(work, rules, minerals);
    }

    private static void FromNamedAcids(Work work, KindRules rules, AcidAccount account, Stated? ph, double? minerals)
    {
        Accept(work, NoneBesideNamed);
        if (ph is null)
        {
            work.Account = account with { Basis = AcidBasis.Composed };
            SetMineralCharge(work, rules, minerals);
            return;
        }
        work.Account = account with { Basis = AcidBasis.Ph };
        SetChargeFromPh(work, account.Ph);
        FlagPh(work, ph.Value, rules);
        if (minerals is { } charge && !MineralsFit(work, charge))
        {
            work.Remarks.Add(new CompositionRemark(
                CompositionTopic.MissingAnion, charge * 1000, work[Component.Charge] * 1000,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The minerals bring {charge * 1000:0.0} mmol of charge per 100 g, more than the acids named can hold: an anion is missing. The pH alone is right, mixtures will come out too sour.")));
        }
    }

    private static void FromKind(Work work, KindRules rules, IngredientKind kind, AcidAccount account, Stated? ph, double? minerals)
    {
        var open = double.IsNaN(rules.AcidHighGrams) || (kind == IngredientKind.TeaOrCoffee && account.Ph < SourTea);
        if (open)
        {
            work.Caveats |= CompositionCaveats.PhNotComputable;
            work.Account = account;
            if (ph is not null)
            {
                // Without its acids this is no more than the free hydrogen; it keeps the pH of the ingredient on its own.
                SetChargeFromPh(work, account.Ph);
                work.Reasons[(int)Component.Charge] = "";
            }
            return;
        }
        var first = rules.AcidProfile[0].Acid;
        Accept(work, rules.AcidHighGrams == 0 ? "none (kind)" : "at most a trace (kind)");
        work.Highest[(int)first] = rules.AcidHighGrams;
        work.Account = account with { Basis = AcidBasis.Traces };
        if (ph is not null)
        {
            SetChargeFromPh(work, account.Ph);
            FlagPh(work, ph.Value, rules);
        }
        else if (rules.MineralsAreBicarbonate)
        {
            work.Set(Component.Charge, minerals ?? 0, "minerals of water stand as bicarbonate (kind)");
        }
        else
        {
            // Vitamin C in a thing that is not sour stands as its salt.
            work.Set(Component.Charge, work[Component.Ascorbic], "its minerals are taken as balanced (kind)");
            FlagBuffers(work, rules);
            if (minerals > FewMinerals && rules.AcidHighGrams > 0)
            {
                work.Caveats |= CompositionCaveats.ChargeAssumed;
            }
        }
    }

    private static void SetMineralCharge(Work work, KindRules rules, double? minerals)
    {
        if (minerals is { } charge)
        {
            if (MineralsFit(work, charge))
            {
                work.Set(Component.Charge, charge, "potassium, calcium, magnesium and phosphorus");
                work.Caveats |= CompositionCaveats.ChargeAssumed;
            }
            else
            {
                work.Caveats |= CompositionCaveats.PhNotComputable;
                work.Remarks.Add(new CompositionRemark(
                    CompositionTopic.MissingAnion, charge * 1000, double.NaN,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The minerals bring {charge * 1000:0.0} mmol of charge per 100 g, more than the acids named can hold: an anion is missing and no pH can be computed.")));
            }
        }
        else if (rules.ChargeIsNothing)
        {
            work.Set(Component.Charge, 0, "its minerals are taken as balanced (kind)");
            // A pure acid has no minerals; anything else has some that nobody told.
            work.Caveats |= rules.AcidHighGrams == 0 ? CompositionCaveats.None : CompositionCaveats.ChargeAssumed;
        }
        else if (!double.IsNaN(rules.ChargePerLitre))
        {
            work.Set(Component.Charge, rules.ChargePerLitre * work.Litres, "strong-ion difference of such juices (kind)");
            work.Caveats |= CompositionCaveats.ChargeAssumed;
        }
        else
        {
            work.Caveats |= CompositionCaveats.PhNotComputable;
        }
        FlagBuffers(work, rules);
    }

    private static void SetChargeFromPh(Work work, double ph)
    {
        var charge = AcidBase.ChargeFrom(ph, MolesPerLitre(work, 1));
        if (double.IsNaN(charge))
        {
            work.Caveats |= CompositionCaveats.PhNotComputable;
            return;
        }
        work.Set(Component.Charge, charge * work.Litres, FigureQuantities.Ph);
    }

    private static void FlagPh(Work work, Stated ph, KindRules rules)
    {
        if (ph.Status != FigureStatus.Measured)
        {
            // A pH from a book is of other fruit than this.
            work.Caveats |= CompositionCaveats.ChargeAssumed;
        }
        FlagBuffers(work, rules);
    }

    private static void FlagBuffers(Work work, KindRules rules)
    {
        const double MuchProtein = 0.5;
        if (rules.ProteinBuffers && work[Component.Protein] > MuchProtein)
        {
            work.Caveats |= CompositionCaveats.PhNotComputable;
        }
    }

    /// <summary>All acids count as known: those that no figure names, for the reason given.</summary>
    private static void Accept(Work work, string reason)
    {
        for (var c = Components.FirstAcid; c < Components.LastAcid; c++)
        {
            if (!work.Knows(c))
            {
                work.Set(c, 0, reason);
            }
        }
    }

    private static void SetAcids(Work work, ReadOnlySpan<double> profile, double totalMoles, string reason)
    {
        var shares = 0.0;
        foreach (var share in profile)
        {
            shares += share;
        }
        for (var a = 0; a < profile.Length - 1; a++)
        {
            work.Set(Components.FirstAcid + a, totalMoles * profile[a] / shares, profile[a] > 0 ? reason : NoneBesideNamed);
        }
    }

    /// <summary>Shares of the acids: those of the record where it names any, else the kind's.</summary>
    private static double[] Profile(Work work, KindRules rules)
    {
        var profile = new double[Components.AcidCount];
        var sum = 0.0;
        for (var a = 0; a < profile.Length - 1; a++)
        {
            profile[a] = work.Vector[(int)Components.FirstAcid + a];
            sum += Components.FirstAcid + a == Component.Ascorbic ? 0 : profile[a];
        }
        if (sum == 0)
        {
            Array.Clear(profile);
            foreach (var (acid, share) in rules.AcidProfile)
            {
                profile[acid - Components.FirstAcid] = share;
            }
        }
        return profile;
    }

    private static double ChargeAtEnd(ReadOnlySpan<double> profile)
    {
        double sum = 0, charge = 0;
        for (var a = 0; a < profile.Length; a++)
        {
            sum += profile[a];
            charge += profile[a] * AcidBase.ChargeAtEndPoint[a];
        }
        return charge / sum;
    }

    private static double[] MolesPerLitre(Work work, double factor)
    {
        var moles = new double[Components.AcidCount];
        for (var a = 0; a < moles.Length - 1; a++)
        {
            moles[a] = factor * work.Vector[(int)Components.FirstAcid + a] / work.Litres;
        }
        return moles;
    }

    /// <summary>Strong-ion difference of the minerals but sodium, mol per 100 g or 100 mL; null where the record has no potassium.</summary>
    private static double? MineralCharge(FigureTable facts)
    {
        if (facts.Find(FigureQuantities.Potassium) is not { } potassium)
        {
            return null;
        }
        var phosphoric = facts.Find("phosphoric_g") is not null;
        // Milligrams in, equivalents per "litre" out: per 100 g in, per 100 g out.
        var charge = AcidBase.ChargeFromMinerals(
            0, potassium.Value, Or0(FigureQuantities.Calcium), Or0(FigureQuantities.Magnesium), Or0(FigureQuantities.Phosphorus), phosphoric);
        // More phosphorus than cations: it is bound in protein and the like, not free acid.
        return Math.Max(0, charge);

        double Or0(string quantity) => facts.Find(quantity)?.Value ?? 0;
    }

    private static bool MineralsFit(Work work, double charge) =>
        AcidBase.MineralChargeIsCredible(charge / work.Litres, MolesPerLitre(work, 1)) || charge <= FewMinerals;

    private static double UncertaintyOfPh(Stated ph) =>
        ph.Status == FigureStatus.Measured ? MeasuredPhUncertainty
        : double.IsNaN(ph.Uncertainty) ? PrintedPhUncertainty
        : Math.Max(ph.Uncertainty, MeasuredPhUncertainty);

    private static double VariationOfAcid(FigureTable facts, KindRules rules, Stated? titration)
    {
        const double CarefulTitration = 0.02;
        if (titration is { } stated && stated.Value > 0)
        {
            if (stated.Status == FigureStatus.Measured)
            {
                return CarefulTitration;
            }
            if (!double.IsNaN(stated.Uncertainty))
            {
                return stated.Uncertainty / stated.Value;
            }
        }
        if (facts.Find(FigureQuantities.AcidVariation) is { } variation)
        {
            return variation.Value / 100;
        }
        // Bounds on the acid itself, e.g. of bottled lemon juice.
        foreach (var (quantity, _) in FigureQuantities.Acids)
        {
            if (facts.Find(quantity) is { HasOwnValue: false } bounded && bounded.Value > 0)
            {
                return bounded.Uncertainty / bounded.Value;
            }
        }
        return rules.AcidVariation;
    }
}
