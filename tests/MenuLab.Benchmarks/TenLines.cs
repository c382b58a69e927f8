using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Benchmarks;

/// <summary>A shaken 10-line drink with fruit, syrup, vinegar, wine, salt and a top, every ingredient with its spreads.</summary>
internal static class TenLines
{
    public static (WeighedLine[] Lines, BuildModel Build) Drink()
    {
        var lemon = Composed((Component.Sucrose, 0.004), (Component.Glucose, 0.0099), (Component.Fructose, 0.011), (Component.Citric, 2.5e-4), (Component.Malic, 1.8e-5), (Component.Ascorbic, 2.2e-6), (Component.Charge, 4.7e-5), (Component.Protein, 0.0035));
        var pear = Composed((Component.Sucrose, 0.008), (Component.Glucose, 0.027), (Component.Fructose, 0.064), (Component.Sorbitol, 0.02), (Component.Malic, 2e-5), (Component.Citric, 5e-6), (Component.Charge, 3e-5), (Component.Fibre, 0.003));
        var syrup = Composed((Component.Sucrose, 0.5));
        var honey = Composed((Component.Glucose, 0.2), (Component.Fructose, 0.25), (Component.Maltose, 0.05), (Component.OtherCarbohydrate, 0.02));
        var vinegar = Composed((Component.Acetic, 8.4e-4), (Component.Charge, 1e-5));
        var wine = Composed((Component.Ethanol, 0.103), (Component.Glucose, 0.004), (Component.Fructose, 0.006), (Component.Tartaric, 2e-5), (Component.Lactic, 1e-5), (Component.Charge, 2.5e-5));
        var tea = Composed((Component.Caffeine, 0.4), (Component.Tannin, 1.0), (Component.OtherSolids, 0.003));
        var saline = Composed((Component.Salt, 0.2));
        var bitters = Composed((Component.Ethanol, 0.38));
        var soda = Composed((Component.Carbonic, 1.7e-4), (Component.Charge, 1e-5));
        WeighedLine[] lines =
        [
            Line(1, tea, 45, Joins.Mixed, 4), Line(2, pear, 30, Joins.Mixed, 4), Line(3, lemon, 20, Joins.Mixed, 4), Line(4, syrup, 15, Joins.Mixed, 22),
            Line(5, honey, 5, Joins.Mixed, 22), Line(6, vinegar, 5, Joins.Mixed, 22), Line(7, wine, 20, Joins.Mixed, 4), Line(8, saline, 0.5, Joins.Mixed, 22),
            Line(9, bitters, 0.8, Joins.OnTop, 22), Line(10, soda, 60, Joins.OnTop, 4),
        ];
        var shaken = new MethodModel
        {
            Key = "shaken", Name = "Shaken", Ice = "cubes", IceGramsPer100Millilitres = 180, VesselJoulesPerKelvin = 49, AmbientJoules = 500,
            ApproachKelvin = 0.3, DilutionUncertainty = 0.05, Source = "beverage science, section 7",
        };
        var cubes = new Core.Drafts.IceForm("cubes", "Cubes", -1, 0.02, 40, "beverage science, section 7");
        return (lines, new BuildModel(shaken, cubes, new Glass("long_glass", "Long glass", 400, 360, "cubes", "made up"), cubes));
    }

    private static WeighedLine Line(int id, Composition composition, double millilitres, Joins joins, double celsius) =>
        new(new IngredientId(new Guid(id, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)), composition, millilitres * composition.GramsPerMillilitre, composition.GramsPerMillilitre,
            joins, Place.In, celsius, false, new LineCost(millilitres, 0.01));

    private static Composition Composed(params ReadOnlySpan<(Component Component, double PerGram)> parts)
    {
        var vector = new double[Components.Count];
        foreach (var (component, perGram) in parts)
        {
            vector[(int)component] = perGram;
        }
        vector[(int)Component.Water] = 1 - new Liquid(vector).Grams;
        return new Composition(vector, ulong.MaxValue, Spreads(vector), default, CompositionCaveats.None, -0.3);
    }

    // Sugar, acid, charge and density, as the pantry gives a fruit.
    private static List<Spread> Spreads(double[] vector)
    {
        var spreads = new List<Spread>();
        Add(SpreadSource.Sugar, 0.06, c => c is >= Component.Sucrose and <= Component.SugarNotToldApart);
        Add(SpreadSource.Acid, 0.08, c => c.IsAcid() && c != Component.Carbonic);
        Add(SpreadSource.Charge, 0.1, c => c == Component.Charge);
        var density = new double[Components.Count];
        density[(int)Component.Residual] = 0.005;
        spreads.Add(new Spread(SpreadSource.Density, density, 0.005));
        return spreads;

        void Add(SpreadSource source, double relative, Func<Component, bool> among)
        {
            var change = new double[Components.Count];
            for (var c = 0; c < Components.Count; c++)
            {
                if (among((Component)c))
                {
                    change[c] = relative * vector[c];
                    change[(int)Component.Water] -= change[c] * Components.GramsPerUnit((Component)c);
                }
            }
            if (change.Any(x => x != 0))
            {
                spreads.Add(new Spread(source, change, relative));
            }
        }
    }
}
