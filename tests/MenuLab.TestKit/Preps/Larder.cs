using CsCheck;
using MenuLab.Core;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;

namespace MenuLab.TestKit.Preps;

/// <summary>Bought ingredients made from figures, as the pantry makes them, and random preps of them.</summary>
public static class Larder
{
    public static readonly IngredientId Sugar = Id(1);
    public static readonly IngredientId Water = Id(2);
    public static readonly IngredientId Raspberry = Id(3);
    public static readonly IngredientId Vinegar = Id(4);
    public static readonly IngredientId TeaLeaf = Id(5);
    public static readonly IngredientId Spice = Id(6);
    public static readonly IngredientId Spirit = Id(7);
    public static readonly IngredientId Lemon = Id(8);
    public static readonly IngredientId Citric = Id(9);
    public static readonly IngredientId Herb = Id(10);

    private static readonly Dictionary<IngredientId, (Composition Composition, SolidKind Solid)> Shelf = new()
    {
        [Sugar] = (Build(IngredientKind.SugarOrSyrup, ("sucrose_g", 100)), SolidKind.Dissolves),
        [Water] = (Build(IngredientKind.Water), SolidKind.Dissolves),
        [Raspberry] = (Build(IngredientKind.Produce, ("water_g", 85.75), ("total_sugars_g", 4.42), ("fibre_g", 6.5), ("protein_g", 1.2), ("fat_g", 0.65),
            ("citric_g", 1.7), ("malic_g", 0.1), ("ph", 3.3)), SolidKind.Fruit),
        [Vinegar] = (Build(IngredientKind.Vinegar, ("acetic_g", 5), ("ph", 2.5), ("density_g_ml", 1.007)), SolidKind.Dissolves),
        [TeaLeaf] = (Build(IngredientKind.TeaOrCoffee, ("water_g", 6), ("protein_g", 22), ("fibre_g", 28)), SolidKind.TeaLeaf),
        [Spice] = (Build(IngredientKind.HerbOrSpice, ("water_g", 10), ("fibre_g", 30), ("fat_g", 6), ("protein_g", 8)), SolidKind.Spice),
        [Spirit] = (Build(IngredientKind.Alcohol, ("ethanol_g", 33.3), ("total_sugars_g", 0), ("ta_citric_g", 0)), SolidKind.Dissolves),
        [Lemon] = (Build(IngredientKind.CitrusJuice, ("total_sugars_g", 2.5), ("citric_g", 4.7), ("malic_g", 0.2), ("ph", 2.35)), SolidKind.Dissolves),
        [Citric] = (Build(IngredientKind.AcidSaltOrGum, ("citric_g", 100), ("water_g", 0)), SolidKind.Dissolves),
        [Herb] = (Build(IngredientKind.HerbOrSpice, ("water_g", 8), ("fibre_g", 20)), SolidKind.DryHerb),
    };

    public static IngredientId Id(int number) => new(new Guid(number, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7));

    public static Composition Of(IngredientId id) => Shelf[id].Composition;

    public static Composition? Find(IngredientId id) => Shelf.TryGetValue(id, out var found) ? found.Composition : null;

    public static Composition Build(IngredientKind kind, params (string Quantity, double Value)[] figures) =>
        CompositionBuilder.Build(
            kind, CompositionBuilder.PerMass,
            [.. figures.Select(f => new IngredientFigure(f.Quantity, f.Value, double.NaN, double.NaN, "test", FigureStatus.Confirmed, "house"))], default).Composition;

    public static PrepLine Line(IngredientId id, double grams) => new(id, grams, Shelf.TryGetValue(id, out var found) ? found.Solid : SolidKind.Dissolves);

    public static RecipeVersion Recipe(IReadOnlyList<PrepLine> lines, params IReadOnlyList<PrepStep> steps) => Recipe(Id(1000), "Test prep", lines, steps);

    public static RecipeVersion Recipe(IngredientId prep, string name, IReadOnlyList<PrepLine> lines, params IReadOnlyList<PrepStep> steps) =>
        RecipeVersion.Make(prep, 1, name, lines, steps).Value;

    public static Result<PrepOutcome> Work(RecipeVersion recipe) => PrepProcess.Work(recipe, Find);

    /// <summary>Random steps after everything is in the pot; not every order of them makes sense.</summary>
    private static readonly Gen<PrepStep> Steps = Gen.OneOf<PrepStep>(
        Gen.Select(Gen.Double[0, 40], Gen.Double[300, 2500], (minutes, watts) => (PrepStep)new Heat(minutes) { Watts = watts, Hob = Hob.Gas }),
        Gen.Double[0, 30].Select(minutes => (PrepStep)new Heat(minutes) { Lid = true }),
        Gen.Double[0, 20].Select(minutes => (PrepStep)new Heat(minutes)),
        Gen.Select(Gen.Double[0, 600], Gen.Double[2, 98], (minutes, celsius) => (PrepStep)new Steep(minutes, celsius)),
        Gen.Double[0, 72].Select(hours => (PrepStep)new Rest(hours)),
        Gen.Bool.Select(pressed => (PrepStep)new Strain(StrainerMesh.Fine, pressed)),
        Gen.Double[1, 5].Select(minutes => (PrepStep)new Blend(minutes)),
        Gen.Double[300, 900].Select(grams => (PrepStep)new Reduce(ReduceTo.Grams, grams)),
        Gen.Double[20, 70].Select(brix => (PrepStep)new Reduce(ReduceTo.Brix, brix)),
        Gen.Double[250, 900].Select(millilitres => (PrepStep)new Reduce(ReduceTo.Millilitres, millilitres)),
        Gen.Double[1, 5].Select(volumes => (PrepStep)new Carbonate(volumes)),
        Gen.Bool.Select(milk => (PrepStep)new Clarify(milk ? ClarifiedBy.Milk : ClarifiedBy.Agar)),
        Gen.Double[1, 20].Select(days => (PrepStep)new Ferment(days, 20)),
        Gen.Double[200, 1500].Select(weighed => (PrepStep)new Chill(4) { WeighedGrams = weighed }));

    /// <summary>Random lines and steps: 1 to 10 ingredients, water always, 1 to 6 steps after they are combined.</summary>
    public static readonly Gen<RecipeVersion> Recipes = Gen.Select(
        Gen.Double[400, 1500], Gen.Double[1, 300].Array[Shelf.Count], Gen.Bool.Array[Shelf.Count], Steps.List[1, 6],
        (water, grams, present, steps) =>
        {
            var lines = new List<PrepLine> { Line(Water, water) };
            foreach (var (id, i) in Shelf.Keys.Select((id, i) => (id, i)))
            {
                if (present[i] && id != Water)
                {
                    lines.Add(Line(id, Shelf[id].Solid is SolidKind.Dissolves or SolidKind.Fruit ? grams[i] : grams[i] / 20));
                }
            }
            return Recipe(lines, [new Combine([.. Enumerable.Range(0, lines.Count)]), .. steps]);
        });

    /// <summary>How much of a component comes out in all, in the component's unit.</summary>
    public static double Component(PrepOutcome outcome, Component component) => outcome.Grams.Value * outcome.Composition.PerGram[(int)component];
}
