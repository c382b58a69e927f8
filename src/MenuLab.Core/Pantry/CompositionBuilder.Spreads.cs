using MenuLab.Core.Solutions;

namespace MenuLab.Core.Pantry;

public static partial class CompositionBuilder
{
    // 0.15 % vol (k = 1), from what labels may be off by.
    private const double LabelAbv = 0.0015;

    private const double GramsOfEthanolPerMillilitre = EthanolDensity.PureAt20 / 1000;

    // Portion weights are rounded; a density table or one computed from the parts is better; the model's own is good to 0.5 %.
    private const double PrintedDensity = 0.01;
    private const double ModelDensity = 0.005;
    private const double MeasuredDensity = 0.001;

    // Sugar unknown between 0 and 25 g/100 mL, each as likely: 25 x 0.38 / sqrt 12 = 2.7 % of density.
    private const double SugarUnknownDensity = 0.027;

    /// <summary>The standard uncertainties, one per source; solids rise at the cost of water.</summary>
    private static List<Spread> Spreads(Work work, FigureTable facts, KindRules rules, IngredientKind kind, Stated? density)
    {
        var spreads = new List<Spread>(6);
        Sugar(spreads, work, facts, rules);
        AcidAndCharge(spreads, work, rules);
        Ethanol(spreads, work, kind);
        Volume(spreads, work, kind, density);
        OtherTraces(spreads, work);
        return spreads;
    }

    private static void Sugar(List<Spread> spreads, Work work, FigureTable facts, KindRules rules)
    {
        if (!work.Knows(Component.SugarNotToldApart))
        {
            return;
        }
        // The vector is per gram by now; figures are per 100 g or 100 mL.
        var total = work.SugarGrams;
        var stated = facts.Find(FigureQuantities.SugarUncertainty)?.Value / 100 ?? work.SugarUncertainty / work.TotalGrams;
        var uncertainty = double.IsNaN(stated) ? total * rules.SugarVariation : stated;
        var change = new double[Components.Count];
        if (total > 0)
        {
            for (var c = Component.Sucrose; c <= Component.SugarNotToldApart; c++)
            {
                change[(int)c] = work[c] / total * uncertainty;
            }
        }
        else
        {
            uncertainty = UncertaintyUpTo(work.Highest[(int)Component.SugarNotToldApart]);
            change[(int)Component.SugarNotToldApart] = uncertainty;
        }
        Add(spreads, work, SpreadSource.Sugar, change, total > 0 ? uncertainty / total : 0);
    }

    private static void AcidAndCharge(List<Spread> spreads, Work work, KindRules rules)
    {
        var account = work.Account;
        var acid = new double[Components.Count];
        var charge = new double[Components.Count];
        var variation = account.AcidVariation;
        switch (account.Basis)
        {
            case AcidBasis.Unknown:
                return;
            case AcidBasis.Traces:
                var first = rules.AcidProfile[0].Acid;
                acid[(int)first] = UncertaintyUpTo(work.Highest[(int)first]) / Components.GramsPerUnit(first);
                variation = 0;
                break;
            case AcidBasis.TitrationAndPh:
                InferAgain(work, rules, account.Ph, account.TitrationEquivalentsPerLitre * (1 + variation), acid);
                InferAgain(work, rules, Math.Min(account.Ph + account.PhUncertainty, AcidBase.EndPoint - 0.5), account.TitrationEquivalentsPerLitre, charge);
                break;
            case AcidBasis.Ph:
                // More acid at the same pH binds more charge.
                var perLitre = 1000 * work.GramsPerMillilitre;
                var composed = AcidsPerLitre(work, perLitre, 1);
                var nominal = AcidBase.ChargeFrom(account.Ph, composed);
                ScaleAcids(work, acid, variation);
                acid[(int)Component.Charge] = (AcidBase.ChargeFrom(account.Ph, AcidsPerLitre(work, perLitre, 1 + variation)) - nominal) / perLitre;
                charge[(int)Component.Charge] = (AcidBase.ChargeFrom(account.Ph + account.PhUncertainty, composed) - nominal) / perLitre;
                break;
            case AcidBasis.Titration:
            case AcidBasis.Composed:
                ScaleAcids(work, acid, variation);
                charge[(int)Component.Charge] = MineralChargeVariation * work[Component.Charge];
                if (work.Reasons[(int)Component.Charge] == FigureQuantities.Charge)
                {
                    // Known by formula: it moves with its acid.
                    acid[(int)Component.Charge] = variation * work[Component.Charge];
                    charge[(int)Component.Charge] = 0;
                }
                break;
        }
        Add(spreads, work, SpreadSource.Acid, acid, variation);
        Add(spreads, work, SpreadSource.Charge, charge, 0);
    }

    private static void InferAgain(Work work, KindRules rules, double ph, double equivalentsPerLitre, double[] change)
    {
        var inferred = AcidBase.InferFrom(ph, equivalentsPerLitre, Profile(work, rules));
        if (!inferred.Converged)
        {
            return;
        }
        var perLitre = 1000 * work.GramsPerMillilitre;
        var total = 0.0;
        for (var c = Components.FirstAcid; c < Components.LastAcid; c++)
        {
            total += work[c];
        }
        // A record that says of its acids that there are none has none to scale, whatever its titration says.
        ScaleAcids(work, change, total > 0 ? inferred.TotalMolesPerLitre / perLitre / total - 1 : 0);
        change[(int)Component.Charge] = inferred.ChargeMolesPerLitre / perLitre - work[Component.Charge];
    }

    private static void ScaleAcids(Work work, double[] change, double relative)
    {
        for (var c = Components.FirstAcid; c < Components.LastAcid; c++)
        {
            change[(int)c] = work[c] * relative;
        }
    }

    private static double[] AcidsPerLitre(Work work, double perLitre, double factor)
    {
        var moles = new double[Components.AcidCount];
        for (var a = 0; a < moles.Length - 1; a++)
        {
            moles[a] = factor * perLitre * work.Vector[(int)Components.FirstAcid + a];
        }
        return moles;
    }

    private static void Ethanol(List<Spread> spreads, Work work, IngredientKind kind)
    {
        if (!work.Knows(Component.Ethanol))
        {
            return;
        }
        var grams = work[Component.Ethanol];
        var uncertainty = !double.IsNaN(work.EthanolUncertainty) ? work.EthanolUncertainty / work.TotalGrams
            : grams > 0 ? LabelAbv * GramsOfEthanolPerMillilitre / work.GramsPerMillilitre
            : kind == IngredientKind.Alcohol ? 0
            : UncertaintyUpTo(work.Highest[(int)Component.Ethanol]);
        var change = new double[Components.Count];
        change[(int)Component.Ethanol] = uncertainty;
        Add(spreads, work, SpreadSource.Ethanol, change, grams > 0 ? uncertainty / grams : 0);
    }

    private static void Volume(List<Spread> spreads, Work work, IngredientKind kind, Stated? density)
    {
        var sweetUnknown = kind == IngredientKind.Alcohol && !work.Knows(Component.SugarNotToldApart);
        var relative = density is not { } stated ? sweetUnknown ? SugarUnknownDensity : ModelDensity
            : stated.Status == FigureStatus.Measured ? MeasuredDensity
            : !double.IsNaN(stated.Uncertainty) ? stated.Uncertainty / stated.Value
            : stated.Status == FigureStatus.Confirmed ? PrintedDensity
            : ModelDensity;
        var change = new double[Components.Count];
        change[(int)Component.Residual] = relative / work.GramsPerMillilitre;
        spreads.Add(new Spread(SpreadSource.Density, change, relative));
    }

    private static void OtherTraces(List<Spread> spreads, Work work)
    {
        // Traces by the kind move as one: none of them matters enough for a source of its own.
        var change = new double[Components.Count];
        foreach (var component in (ReadOnlySpan<Component>)[Component.Protein, Component.Fat, Component.Fibre, Component.OtherCarbohydrate, Component.Salt,
            Component.Sorbitol, Component.Glycerol])
        {
            change[(int)component] = UncertaintyUpTo(work.Highest[(int)component]);
        }
        Add(spreads, work, SpreadSource.Other, change, 0);
        Trace(Component.Caffeine, work.CaffeineUncertainty);
        Trace(Component.Quinine, work.QuinineUncertainty);

        void Trace(Component component, double uncertainty)
        {
            if (uncertainty > 0)
            {
                var trace = new double[Components.Count];
                trace[(int)component] = uncertainty / work.TotalGrams;
                spreads.Add(new Spread(SpreadSource.Other, trace, uncertainty / work.TotalGrams / work[component]));
            }
        }
    }

    /// <summary>A best guess of nothing whose 95 % range reaches up to the bound (g per 100 g), per gram.</summary>
    private static double UncertaintyUpTo(double highGrams) => highGrams / 1.96 / 100;

    /// <summary>Adds a spread, if it is one, made mass-neutral by water; where there is not so much water (dry goods), it is cut.</summary>
    private static void Add(List<Spread> spreads, Work work, SpreadSource source, double[] change, double relative)
    {
        var grams = new Liquid(change).Grams;
        var any = false;
        foreach (var part in change)
        {
            any |= part != 0;
        }
        if (!any)
        {
            return;
        }
        var water = work[Component.Water];
        if (Math.Abs(grams) > water)
        {
            var cut = water / Math.Abs(grams);
            for (var i = 0; i < change.Length; i++)
            {
                change[i] *= cut;
            }
            relative *= cut;
            grams *= cut;
        }
        change[(int)Component.Water] -= grams;
        spreads.Add(new Spread(source, change, relative));
    }
}
