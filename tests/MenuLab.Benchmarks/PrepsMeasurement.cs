using System.Diagnostics;
using System.Globalization;
using CsCheck;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;
using MenuLab.TestKit.Preps;

namespace MenuLab.Benchmarks;

/// <summary>Preps: a chain 6 deep with 40 ingredients worked out anew, and the worst mass balance over random recipes.</summary>
internal static class PrepsMeasurement
{
    private const int Depth = 6;
    private const int Ingredients = 40;
    private const int WarmUp = 2_000;
    private const int Batches = 201;
    private const int PerBatch = 10;

    public static int Chain()
    {
        var (graph, bought) = Make();
        var sink = 0.0;
        for (var i = 0; i < WarmUp; i++)
        {
            sink += Work();
        }
        // Tiered compilation finishes in the background.
        Thread.Sleep(500);
        for (var i = 0; i < WarmUp; i++)
        {
            sink += Work();
        }
        var batches = new double[Batches];
        for (var b = 0; b < Batches; b++)
        {
            var start = Stopwatch.GetTimestamp();
            for (var i = 0; i < PerBatch; i++)
            {
                sink += Work();
            }
            batches[b] = Stopwatch.GetElapsedTime(start).TotalMilliseconds / PerBatch;
        }
        Array.Sort(batches);
        Console.WriteLine($"{Depth} preps deep, {Ingredients} bought ingredients, {graph.Order.Sum(r => r.Steps.Count)} steps; {Batches} batches of {PerBatch}; check sum {sink:E3}");
        Figure.Print("preps_chain_ms", batches[Batches / 2], "ms");
        Figure.Print("preps_chain_p95_ms", batches[Batches * 95 / 100], "ms");
        Table();
        return 0;

        double Work() => graph.Work(id => bought.GetValueOrDefault(id))[graph.Order[^1].Prep].Value.Grams.Value;
    }

    public static int MassBalance(int recipes)
    {
        var worst = 0.0;
        var made = 0;
        var gate = new Lock();
        Larder.Recipes.Sample(
            recipe =>
            {
                var worked = Larder.Work(recipe);
                lock (gate)
                {
                    made += worked.IsOk ? 1 : 0;
                    worst = worked.IsOk ? Math.Max(worst, worked.Value.LedgerGap) : worst;
                }
            },
            iter: recipes, threads: 1);
        Console.WriteLine($"{recipes} random recipes, {made} of them can be made");
        // Some 1e-16: six decimals would print it as nothing.
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"figure: mass_balance_worst_relative {worst:E2} 1"));
        return made > 0 ? 0 : 1;
    }

    /// <summary>Preps beside what was worked out by hand (docs/science.md, sections 1, 11 and 12).</summary>
    private static void Table()
    {
        var fruit = Made.Of(
            (Component.SugarNotToldApart, 0.9 * 11.70 / 225), (Component.Citric, 0.9 * 4.05 / 225 / 192.124), (Component.OtherSolids, 0.9 * 3.38 / 225), (Component.Fibre, 0.1));
        var sugar = Made.Of((Component.Sucrose, 1));
        var vinegar = Made.Of((Component.Acetic, 15.0 / 302.1 / 60.052), (Component.OtherSolids, 1.2 / 302.1));
        Composition Of(IngredientId id) => id == Larder.Raspberry ? fruit : id == Larder.Sugar ? sugar : id == Larder.Vinegar ? vinegar : id == Larder.Water ? Made.Water : Larder.Of(id);
        PrepOutcome Work(PrepLine[] lines, params PrepStep[] steps) => PrepProcess.Work(Larder.Recipe(lines, steps), Of).Value;
        PrepLine[] shrub = [new(Larder.Raspberry, 300, SolidKind.Fruit), new(Larder.Sugar, 300), new(Larder.Vinegar, 302.1)];
        var cold = Work(shrub, new Combine([0]), new Press(0.75), new Combine([1, 2]));
        var hot = Work(shrub, new Combine([0]), new Press(0.75), new Combine([1, 2]), new Heat(10) { WeighedGrams = 827.1 - 91.98 });
        Row("shrub cold, mass g", 827.1, cold.Grams.Value);
        Row("shrub cold, volume mL", 704.6, cold.Millilitres.Value);
        Row("shrub cold, sugar g/100 mL", 44.28, PrepFigures.Of(cold.Composition, PrepFigure.Sugar).Value);
        Row("shrub cold, acetic g/100 mL", 2.13, PrepFigures.Of(cold.Composition, PrepFigure.Acetic).Value);
        Row("shrub cold, acid as citric g/100 mL", 2.85, PrepFigures.Of(cold.Composition, PrepFigure.Acid).Value);
        Row("shrub cold, Brix read", 39.7, PrepFigures.Of(cold.Composition, PrepFigure.Brix).Value);
        Row("shrub hot, volume mL", 612.0, hot.Millilitres.Value);
        Row("shrub hot, acetic left g", 13.02, 60.052 * Larder.Component(hot, Component.Acetic));
        Row("shrub hot, sugar g/100 mL", 50.93, PrepFigures.Of(hot.Composition, PrepFigure.Sugar).Value);
        Row("shrub hot, acid as citric g/100 mL", 2.93, PrepFigures.Of(hot.Composition, PrepFigure.Acid).Value);
        foreach (var (name, part, weighed, brix, density, millilitres) in ((string, double, double?, double, double, double)[])[
            ("1:1", 100, null, 50.00, 1.22965, 162.65), ("1.5:1", 150, null, 60.00, 1.28661, 194.31), ("2:1", 200, null, 66.67, 1.32675, 226.12),
            ("1:1 less 6 %", 100, 188, 53.19, 1.2474, 150.72)])
        {
            PrepLine[] lines = [new(Larder.Sugar, part), new(Larder.Water, 100)];
            var syrup = weighed is null ? Work(lines, new Dissolve([0, 1])) : Work(lines, new Dissolve([0, 1]), new Heat(5) { WeighedGrams = weighed });
            Row($"syrup {name}, Brix", brix, PrepFigures.Of(syrup.Composition, PrepFigure.Brix).Value);
            Row($"syrup {name}, g/mL", density, syrup.Composition.GramsPerMillilitre);
            Row($"syrup {name}, mL", millilitres, syrup.Millilitres.Value);
        }
        foreach (var (leaf, water, minutes, caffeine, polyphenols) in ((double, double, double, double, double)[])[
            (2.5, 200, 3, 67, 397), (2.5, 200, 10, 67.5, 450), (2, 237, 3, 53.5, double.NaN)])
        {
            var tea = Work([Larder.Line(Larder.TeaLeaf, leaf), Larder.Line(Larder.Water, water)], new Combine([0, 1]), new Steep(minutes, 95));
            Row($"tea {leaf} g in {water} mL, {minutes} min at 95 C, caffeine mg", caffeine, Larder.Component(tea, Component.Caffeine));
            if (!double.IsNaN(polyphenols))
            {
                Row($"tea {leaf} g in {water} mL, {minutes} min at 95 C, polyphenols mg", polyphenols, Larder.Component(tea, Component.Tannin));
            }
        }
    }

    private static void Row(string what, double byHand, double model) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"table: {what} | {byHand} | {model:0.####} | {Math.Round(100 * (model / byHand - 1), 2):+0.00;-0.00;0.00} %"));

    // Every prep holds seven bought things, the deepest five, and the prep below: fruit is steeped and strained, the pot is boiled down.
    private static (PrepGraph Graph, Dictionary<IngredientId, Composition> Bought) Make()
    {
        IngredientId[] sorts = [Larder.Sugar, Larder.Water, Larder.Raspberry, Larder.Vinegar, Larder.Lemon, Larder.Spice, Larder.TeaLeaf];
        var bought = new Dictionary<IngredientId, Composition>();
        var recipes = new List<RecipeVersion>();
        for (var level = 0; level < Depth; level++)
        {
            var lines = new List<PrepLine>();
            while (lines.Count < (level == 0 ? 5 : 7))
            {
                var sort = sorts[lines.Count];
                var id = Larder.Id(2000 + bought.Count);
                bought[id] = Larder.Of(sort);
                lines.Add(Larder.Line(sort, sort == Larder.Spice || sort == Larder.TeaLeaf ? 5 : 100 + 10 * level) with { Ingredient = id });
            }
            if (level > 0)
            {
                lines.Add(new PrepLine(recipes[^1].Prep, 200));
            }
            recipes.Add(Larder.Recipe(
                Larder.Id(3000 + level), $"Prep {level}", lines, new Combine([.. Enumerable.Range(0, lines.Count)]), new Steep(30, 60), new Strain(),
                new Heat(5) { Watts = 800, Hob = Hob.Gas }));
        }
        return bought.Count == Ingredients
            ? (PrepGraph.Of(recipes).Value, bought)
            : throw new InvalidOperationException($"{bought.Count} ingredients, not {Ingredients}.");
    }
}
