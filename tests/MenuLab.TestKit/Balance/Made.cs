using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.TestKit.Balance;

/// <summary>Compositions and lines made by hand, so that the engine is tested without the shipped ingredients.</summary>
public static class Made
{
    /// <summary>What every hand-made composition knows: everything.</summary>
    private const ulong All = (1UL << Components.Count) - 1 | Composition.TotalSugarKnown | Composition.TotalAcidKnown | Composition.SolidsKnown;

    /// <summary>A composition per gram; water takes up what is left of the gram.</summary>
    public static Composition Of(params ReadOnlySpan<(Component Component, double PerGram)> parts) => Of(All, [], parts);

    public static Composition Of(ulong known, IReadOnlyList<Spread> spreads, params ReadOnlySpan<(Component Component, double PerGram)> parts)
    {
        var vector = new double[Components.Count];
        foreach (var (component, perGram) in parts)
        {
            vector[(int)component] = perGram;
        }
        vector[(int)Component.Water] = 0;
        vector[(int)Component.Water] = 1 - new Liquid(vector).Grams;
        return new Composition(vector, known, spreads, default, CompositionCaveats.None);
    }

    /// <summary>All bits but those named.</summary>
    public static ulong AllBut(ulong bits) => All & ~bits;

    /// <summary>A spread of one component, u per gram; water gives way.</summary>
    public static Spread Spread(SpreadSource source, Component component, double perGram, double relative)
    {
        var vector = new double[Components.Count];
        vector[(int)component] = perGram;
        vector[(int)Component.Water] -= perGram * Components.GramsPerUnit(component);
        return new Spread(source, vector, relative);
    }

    /// <summary>A composition with a stated density, closed by the residual.</summary>
    public static Composition WithDensity(double gramsPerMillilitre, params ReadOnlySpan<(Component Component, double PerGram)> parts)
    {
        var free = Of(parts);
        var vector = free.PerGram.ToArray();
        vector[(int)Component.Residual] = 1 / gramsPerMillilitre - 1 / free.GramsPerMillilitre;
        return new Composition(vector, All, [], default, CompositionCaveats.None);
    }

    public static Composition Water { get; } = Of();

    /// <summary>1:1 syrup by mass, 50 °Bx.</summary>
    public static Composition Syrup { get; } = Of((Component.Sucrose, 0.5));

    /// <summary>40 % vol, by the ethanol tables: 33.300 % by mass.</summary>
    public static Composition Spirit { get; } = Of((Component.Ethanol, EthanolDensity.MassFraction(40)));

    /// <summary>The lime of the reference's worked drink (section 2): density 1.035, 2 % sugar, 6 g acid per 100 mL.</summary>
    public static Composition WorkedLime { get; } = WithDensity(
        1.035, (Component.Sucrose, 0.02), (Component.Citric, 0.06 / 1.035 / Components.GramsPerUnit(Component.Citric)));

    /// <summary>Lemon juice of section 5's table: 0.3180 mol/L acid (0.97 citric, 0.03 malic), charge 0.0484 mol/L, at 1.03 g/mL.</summary>
    public static Composition TableLemon { get; } = WithDensity(
        1.03,
        (Component.Citric, 0.97 * 0.3180 / 1030),
        (Component.Malic, 0.03 * 0.3180 / 1030),
        (Component.Charge, 0.0484 / 1030));

    private static int _next;

    public static IngredientId Id() => new(new Guid(Interlocked.Increment(ref _next), 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));

    public static WeighedLine Line(Composition composition, double millilitres, Joins joins = Joins.Mixed, double celsius = 22, double uncertaintyMillilitres = 0, IngredientId? id = null) =>
        new(id ?? Id(), composition, millilitres * composition.GramsPerMillilitre, uncertaintyMillilitres * composition.GramsPerMillilitre, joins, Place.In, celsius, false);

    public static WeighedLine TopUp(Composition composition, double celsius = 4) =>
        new(Id(), composition, 0, 0, Joins.OnTop, Place.In, celsius, true);

    public static Core.Drafts.IceForm Cubes { get; } = new("cubes", "Cubes", -1, 0.02, 40, "beverage science, section 7");

    public static MethodModel Shaken { get; } = new()
    {
        Key = "shaken", Name = "Shaken", Ice = "cubes", IceGramsPer100Millilitres = 180, VesselJoulesPerKelvin = 49, AmbientJoules = 500, ApproachKelvin = 0.3,
        DilutionUncertainty = 0.05, Source = "beverage science, section 7",
    };

    public static MethodModel Straight { get; } = new() { Key = "straight", Name = "Straight", Ice = "none", Source = "no ice" };

    public static Glass Highball { get; } = new("highball", "Highball", 330, 300, "cubes", "test");

    public static BuildModel NoBuild { get; } = new(null, null, null, null);

    public static BuildModel Shake { get; } = new(Shaken, Cubes, null, null);
}
