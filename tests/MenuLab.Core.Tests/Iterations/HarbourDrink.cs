using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Iterations;

/// <summary>An invented long drink with fixed ids, so that its snapshot has a hash that can be written down.</summary>
internal static class HarbourDrink
{
    public static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);

    public static MeasuresSet Measures { get; } = new() { Number = 1 };

    public static EngineStamp Stamp { get; } = new(BalanceEngine.Version, Measures.Number, Ice: 1, Jurisdiction: "EU");

    public static BuildCatalogue Catalogue { get; } = new([Made.Shaken], [Made.Cubes], [Made.Highball]);

    private static readonly Ingredient Quince = Of(
        1, "Quince syrup", 4,
        Made.Of(
            Made.AllBut(Component.Quinic.Bit()),
            [Made.Spread(SpreadSource.Sugar, Component.Sucrose, 0.012, 0.03), Made.Spread(SpreadSource.Acid, Component.Malic, 3e-6, 0.1)],
            (Component.Sucrose, 0.41), (Component.Fructose, 0.02), (Component.Malic, 3e-5), (Component.Charge, 1.2e-5)));

    private static readonly Ingredient Verjus = Of(
        2, "Verjus", 4,
        new Composition(
            Made.Of((Component.Tartaric, 1.2e-4), (Component.Malic, 9e-5), (Component.Charge, 4e-5), (Component.Glucose, 0.011)).PerGram,
            Made.AllBut(0), [Made.Spread(SpreadSource.Acid, Component.Tartaric, 1e-5, 0.08)],
            default(AllergenSet).With(Allergen.Sulphites, AllergenState.Unknown), CompositionCaveats.DensityEstimated | CompositionCaveats.ChargeAssumed, -0.3));

    private static readonly Ingredient Spirit = Of(3, "Barley spirit", 22, Made.Spirit);
    private static readonly Ingredient Soda = Of(4, "Soda water", 4, Made.Water);

    public static PantryList Pantry { get; } = new([Quince, Verjus, Spirit, Soda]);

    public static Draft Draft()
    {
        var draft = Core.Drafts.Draft.Start(new DraftId(Guid.Empty), "Harbour fog № 2", default, Noon).Value;
        Do(new AddLine(LineId.New(), Line("45 toasted barley spirit", Spirit, 45, Joins.Mixed), null));
        Do(new AddLine(LineId.New(), Line("¾ oz quince", Quince, 22.5, Joins.Mixed) with { Understood = Line("", Quince, 22.5, Joins.Mixed).Understood with { Assumptions = ["An ounce is 30 mL in this house."] } }, draft.Lines[^1].Id));
        Do(new AddLine(LineId.New(), Line("15-20 verjus", Verjus, 17.5, Joins.Mixed) with { Amount = new TypedAmount(17.5, 15, 20, Unit.Millilitre), Treatment = "fine-strained" }, draft.Lines[^1].Id));
        Do(new AddLine(
            LineId.New(),
            Line("top soda", Soda, 0, Joins.OnTop) with { Amount = new TypedAmount(null, null, null, Unit.Top), Understood = Understood.Nothing },
            draft.Lines[^1].Id));
        Do(new AddLine(LineId.New(), LineContent.KeptAsTyped("5 of Mira's smoke", 5), draft.Lines[^1].Id));
        Do(new ChangeBuild(BuildFields.Method | BuildFields.Glass | BuildFields.Steps, new Build { Method = "shaken", Glass = "highball", Steps = ["Shake hard.", "Strain over ice."] }));
        Do(new ChooseStyle("long"));
        return draft;

        void Do(EditAction action) => Assert.True(draft.Apply(new Edit(EditId.New(), default, default, draft.Version, action, Noon), [], c => c).IsOk);
    }

    public static Snapshot Snapshot() =>
        Core.Iterations.Snapshot.Take(Draft(), Pantry, Catalogue, Measures, id => id == Spirit.Id ? 0.031 : id == Soda.Id ? 0.0009 : 0, "EUR");

    public static Composition Find(ContentHash hash) => Pantry.All.Select(i => i.Composition).Single(c => CompositionText.Hash(c) == hash);

    public static DrinkBalance Balance() => Snapshot().Recompute(Find, Measures);

    private static Ingredient Of(byte id, string name, double keptAt, Composition composition) => new()
    {
        Id = new IngredientId(new Guid(0, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, id)), Key = name, Name = name, Kind = IngredientKind.Juice, KeptAtCelsius = keptAt, Composition = composition,
    };

    private static LineContent Line(string text, Ingredient ingredient, double millilitres, Joins joins) => new()
    {
        Text = text, Ingredient = ingredient.Id, Amount = new TypedAmount(millilitres, null, null, Unit.Millilitre), Joins = joins, StartCelsius = ingredient.KeptAtCelsius,
        Understood = new Understood(millilitres, millilitres * ingredient.Composition.GramsPerMillilitre, 0.25, []),
    };
}
