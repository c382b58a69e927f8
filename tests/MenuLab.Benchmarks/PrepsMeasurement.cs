using System.Diagnostics;
using CsCheck;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
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
        Figure.Print("mass_balance_worst_relative", worst, "1");
        Console.WriteLine($"mass_balance_worst_relative {worst:E2}");
        return made > 0 ? 0 : 1;
    }

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
