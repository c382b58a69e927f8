using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.Data.Drafts;
using MenuLab.Data.Drafts.Rounds;
using MenuLab.Data.House;
using MenuLab.Data.Iterations;
using MenuLab.Data.Opening;
using MenuLab.Data.Pantry;

namespace MenuLab.Data.Tests;

/// <summary>An invented house with three ingredients, enough for a drink.</summary>
internal static class Harbour
{
    public static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);

    public static PersonId Somebody => FirstRows.AtThisMachine;

    public static MeasuresSet Measures { get; } = new() { Number = 1 };

    public static Ingredient Quince { get; } = Of(1, "Quince syrup", (Component.Sucrose, 0.43), (Component.Malic, 3e-5), (Component.Charge, 1.2e-5));

    public static Ingredient Verjus { get; } = Of(2, "Verjus", (Component.Tartaric, 1.2e-4), (Component.Malic, 9e-5), (Component.Charge, 4e-5));

    public static Ingredient Buckthorn { get; } = Of(3, "Åkerholm sea buckthorn purée", (Component.Malic, 2e-4), (Component.Fructose, 0.02), (Component.Charge, 3e-5));

    public static PantryList Pantry { get; } = new([Quince, Verjus, Buckthorn]);

    public static BuildCatalogue Catalogue { get; } = new(
        [
            new MethodModel
            {
                Key = "shaken", Name = "Shaken", Ice = "cubes", IceGramsPer100Millilitres = 180, VesselJoulesPerKelvin = 49, AmbientJoules = 500, ApproachKelvin = 0.3,
                DilutionUncertainty = 0.05, Source = "beverage science, section 7",
            },
        ],
        [new Core.Drafts.IceForm("cubes", "Cubes", -1, 0.02, 40, "beverage science, section 7")], [new Glass("coupe", "Coupe", 180, 150, "none", "made up")]);

    public static async Task<Store> Furnished(Store store)
    {
        await FirstRows.Ensure(store.Writer, Measures, Noon);
        await store.Writer.Write(async db =>
        {
            foreach (var ingredient in Pantry.All)
            {
                var row = new IngredientRow
                {
                    Id = ingredient.Id, Key = ingredient.Key, Name = ingredient.Name, SearchName = SearchName.Of(ingredient.Name), Kind = ingredient.Kind, Basis = ingredient.Basis,
                    KeptAtCelsius = ingredient.KeptAtCelsius, IsCarbonated = false, HasRawEgg = false,
                };
                row.Aliases.Add(new AliasRow { Alias = "Sanddorn " + ingredient.Key, SearchName = SearchName.Of("Sanddorn " + ingredient.Key), Place = 1 });
                row.Figures.Add(new FigureRow { Quantity = "ph", Value = 3.1, Source = "read", Status = FigureStatus.Measured, Origin = "reading" });
                row.Figures.Add(new FigureRow { Quantity = "fibre_g", Low = 0, High = 2, Source = "nobody knows", Status = FigureStatus.Assumed, Origin = "house" });
                db.Add(row);
                var hash = (await db.KeepCompositions([ingredient.Composition]))[0];
                db.Add(new IngredientNowRow { Ingredient = ingredient.Id, Composition = hash });
            }
            return await db.SaveChangesAsync();
        });
        return store;
    }

    public static DraftWriting Drafts(Store store) => new(store.Writer, new Clock(), Understand);

    public static RoundWriting Rounds(Store store) => new(store.Writer, new Clock(), Understand);

    public static CaptureWriting Captures(Store store) => new(store.Writer, new Clock(), Drafts(store), new PantryWriting(store.Writer, new Clock()), Read);

    /// <summary>Reads "20 Verjus" and keeps anything else as typed.</summary>
    public static LineContent Read(string text) =>
        text.Split(' ', 2) is [var figure, var name] && double.TryParse(figure, System.Globalization.CultureInfo.InvariantCulture, out var millilitres)
        && Pantry.All.FirstOrDefault(i => i.Name == name) is { } ingredient
            ? Line(ingredient, millilitres, text)
            : LineContent.KeptAsTyped(text);

    public static IterationWriting Iterations(Store store) => new(store.Writer, new Clock());

    public static LineContent Line(Ingredient ingredient, double millilitres, string? text = null) => Understand(new LineContent
    {
        Text = text ?? $"{millilitres} {ingredient.Name}", Ingredient = ingredient.Id, Amount = new TypedAmount(millilitres, null, null, Unit.Millilitre), StartCelsius = 4,
    });

    public static LineContent Understand(LineContent content) => content with
    {
        Understood = new Understood(content.Amount.Value, content.Amount.Value * Pantry.Find(content.Ingredient!.Value)!.Composition.GramsPerMillilitre, 0.25, []),
    };

    /// <summary>A draft with three lines and a build, at version 4.</summary>
    public static async Task<DraftId> Mix(Store store, string name = "Harbour fog")
    {
        var id = DraftId.New();
        var drafts = Drafts(store);
        await drafts.Start(id, name, Somebody);
        var after = (LineId?)null;
        var seen = 0;
        foreach (var (ingredient, millilitres) in new[] { (Buckthorn, 30.0), (Verjus, 15), (Quince, 22.5) })
        {
            var line = LineId.New();
            Assert.True((await drafts.Apply(id, EditId.New(), Somebody, PageId.New(), seen++, new AddLine(line, Line(ingredient, millilitres), after))).IsOk);
            after = line;
        }
        var build = new ChangeBuild(BuildFields.Method | BuildFields.Glass | BuildFields.Steps, new Build { Method = "shaken", Glass = "coupe", Steps = ["Shake.", "Strain."] });
        Assert.True((await drafts.Apply(id, EditId.New(), Somebody, PageId.New(), seen, build)).IsOk);
        return id;
    }

    public static async Task<IterationToSave> ToSave(Store store, DraftId id, string reason = "softer acid")
    {
        await using var db = store.Read();
        var draft = (await db.OpenDraft(id))!;
        var snapshot = Snapshot.Take(draft, Pantry, Catalogue, Measures);
        var weighed = Weigher.Of(draft.DraftLines, draft.Build.Value, Pantry, Catalogue, Measures);
        return new IterationToSave(
            IterationId.New(), id, draft.Version, null, reason, Somebody, snapshot, BalanceEngine.Of(weighed.Lines, weighed.Build, Detail.RangesAndShares),
            new EngineStamp(BalanceEngine.Version, 1, Jurisdiction: "EU"), [.. Pantry.All.Select(i => i.Composition)]);
    }

    private static Ingredient Of(byte id, string name, params ReadOnlySpan<(Component Component, double PerGram)> parts)
    {
        var vector = new double[Components.Count];
        foreach (var (component, perGram) in parts)
        {
            vector[(int)component] = perGram;
        }
        vector[(int)Component.Water] = 1 - new Liquid(vector).Grams;
        return new Ingredient
        {
            Id = new IngredientId(new Guid(0x01941f29, 0x7c00, 0x7000, 0x90, 0, 0, 0, 0, 0, 0, id)), Key = $"made_up_{id}", Name = name, Kind = IngredientKind.Juice,
            KeptAtCelsius = 4, Composition = new Composition(vector, ~0UL, [], default, CompositionCaveats.None),
        };
    }

    /// <summary>A clock that stands at noon.</summary>
    private sealed class Clock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Noon;
    }
}
