using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Drafts.Rounds;

/// <summary>An invented drink on the bench, and rounds of it.</summary>
internal static class Trial
{
    public static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);

    public static PersonId Ines { get; } = PersonId.New();

    public static PersonId Joss { get; } = PersonId.New();

    public static Ingredient Tea { get; } = Of(1, "Barley tea", Made.Water);

    public static Ingredient Cordial { get; } = Of(2, "Quince cordial", Made.Of((Component.Sucrose, 0.5), (Component.Malic, 5e-5)));

    public static Ingredient Verjus { get; } = Of(3, "Verjus", Made.Of((Component.Tartaric, 1.2e-4), (Component.Malic, 9e-5), (Component.Charge, 4e-5)));

    public static Ingredient Soda { get; } = Of(4, "Soda water", Made.Water);

    public static PourStock Stock { get; } = new(
        new PantryList([Tea, Cordial, Verjus, Soda]), new BuildCatalogue([Made.Shaken, Made.Straight], [Made.Cubes], [Made.Highball]), new MeasuresSet { Number = 1 },
        id => id == Cordial.Id ? 0.02 : 0.001);

    public static LineContent Line(Ingredient ingredient, double amount, Unit unit = Unit.Millilitre, Joins joins = Joins.Mixed, Place place = Place.In) => Stock.Understand(new LineContent
    {
        Text = $"{amount} {ingredient.Name}", Ingredient = ingredient.Id, Amount = new TypedAmount(amount, null, null, unit), Joins = joins, Place = place, StartCelsius = ingredient.KeptAtCelsius,
    });

    public static LineContent Top { get; } = new() { Text = "top soda", Ingredient = Soda.Id, Amount = new TypedAmount(null, null, null, Unit.Top), Joins = Joins.OnTop, StartCelsius = 4 };

    /// <summary>A draft with these lines.</summary>
    public static Draft Bench(IEnumerable<LineContent> lines, string method = "shaken")
    {
        var draft = Draft.Start(DraftId.New(), "Low water orchard", Ines, Noon).Value;
        foreach (var line in lines)
        {
            Do(draft, new AddLine(LineId.New(), line, draft.Lines.Count == 0 ? null : draft.Lines[^1].Id));
        }
        Do(draft, new ChangeBuild(BuildFields.Method | BuildFields.Glass, new Build { Method = method, Glass = "highball" }));
        return draft;
    }

    public static Draft Orchard(string method = "shaken") => Bench([Line(Tea, 45), Line(Cordial, 22.5), Line(Verjus, 15)], method);

    public static void Do(Draft draft, EditAction action) =>
        Assert.True(draft.Apply(new Edit(EditId.New(), Ines, PageId.New(), draft.Version, action, Noon), [], Stock.Understand).IsOk);

    public static Round Round(Draft draft, int pours = 3, RoundSize size = default, params IReadOnlyList<CellAmount> cells) =>
        Core.Drafts.Rounds.Round.Start(new RoundToStart { Id = RoundId.New(), Draft = draft.Id, Pours = pours, Size = size, Cells = cells }, draft, 1, null, Ines, Noon).Value;

    public static WrittenNote Note(Round round, PourLetter letter, long order, PersonId by, params IReadOnlyList<AxisWish> wishes) =>
        new(EntryId.New(), new PourNote { Round = round.Id, Letter = letter, Wishes = wishes }, by, Noon, order);

    public static string Name(IngredientId id) => Stock.Pantry.Find(id)!.Name;

    private static Ingredient Of(byte id, string name, Composition composition) => new()
    {
        Id = new IngredientId(new Guid(0, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, id)), Key = name, Name = name, Kind = IngredientKind.Juice, KeptAtCelsius = 4, Composition = composition,
    };
}
