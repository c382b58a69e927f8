using System.Diagnostics;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.Pantry;
using MenuLab.Data.Seeding;

namespace MenuLab.Benchmarks;

/// <summary>Time from a cell that changes to the figures of all pours and the shared part: six half pours of twelve shipped ingredients.</summary>
internal static class RoundMeasurement
{
    private const int Lines = 12;
    private const int Runs = 300;

    public static int Run()
    {
        var seed = SeedData.Load(SeedData.DefaultFolder);
        var stock = new PourStock(seed.Pantry, seed.Catalogue, seed.Measures, _ => 0.01);
        var round = Start(stock);
        var times = new double[Runs];
        var sink = 0.0;
        for (var i = 0; i < 2 * Runs; i++)
        {
            var start = Stopwatch.GetTimestamp();
            var letter = (PourLetter)(i % Round.MostPours);
            round.Set(letter, round.Lines[i % Lines].Line, CellField.Poured, 5 + i % 10, EntryId.New());
            sink += PourBalance.All(round, stock).Sum(f => f.Sweet.Value) + SharedPart.Of(round, stock.Understand).JugGrams;
            times[i % Runs] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }
        Array.Sort(times);
        Console.WriteLine($"Six half pours of {Lines} lines, {Runs} runs after as many to warm up; check sum {sink:E3}");
        Figure.Print("round_update_median_ms", times[Runs / 2], "ms");
        Figure.Print("round_update_p95_ms", times[Runs * 95 / 100], "ms");
        return 0;
    }

    private static Round Start(PourStock stock)
    {
        var draft = Draft.Start(DraftId.New(), "Twelve lines", default, DateTimeOffset.UnixEpoch).Value;
        var kinds = new[] { IngredientKind.CitrusJuice, IngredientKind.Juice, IngredientKind.SugarOrSyrup, IngredientKind.TeaOrCoffee };
        foreach (var ingredient in stock.Pantry.All.Where(i => kinds.Contains(i.Kind)).Take(Lines))
        {
            var line = stock.Understand(new LineContent
            {
                Text = ingredient.Name, Ingredient = ingredient.Id, Amount = new TypedAmount(10, null, null, Unit.Millilitre), StartCelsius = ingredient.KeptAtCelsius,
            });
            Do(new AddLine(LineId.New(), line, draft.Lines.Count == 0 ? null : draft.Lines[^1].Id));
        }
        Do(new ChangeBuild(BuildFields.Method | BuildFields.Glass, new Build { Method = "shaken", Glass = stock.Catalogue.Glasses[0].Key }));
        return Round.Start(new RoundToStart { Id = RoundId.New(), Draft = draft.Id, Pours = Round.MostPours, Size = RoundSize.Half }, draft, 1, null, default, DateTimeOffset.UnixEpoch).Value;

        void Do(EditAction action) => _ = draft.Apply(new Edit(EditId.New(), default, default, draft.Version, action, DateTimeOffset.UnixEpoch), [], stock.Understand).Value;
    }
}
