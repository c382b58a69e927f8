using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Data.Seeding;

namespace MenuLab.Core.Tests.Reading;

/// <summary>A reader of the shipped pantry, made once for all tests.</summary>
internal static class Reader
{
    private static readonly Lazy<SeedData> LoadedSeed = new(() => SeedData.Load(SeedData.DefaultFolder));

    private static readonly Lazy<DrinkReader> Shipped = new(() => new DrinkReader(Vocabulary.Of(Seed.Pantry, Seed.Catalogue), Seed.Measures));

    public static SeedData Seed => LoadedSeed.Value;

    public static DrinkReader OfShipped => Shipped.Value;

    public static ReadSettings InMillilitres { get; } = new() { BareNumber = Unit.Millilitre };

    public static ReadSettings InOunces { get; } = new() { BareNumber = Unit.FluidOunce };

    public static ReadDrink Read(params string[] lines) => OfShipped.Read(string.Join('\n', lines), InMillilitres);

    public static DraftLine Line(string text) => Assert.Single(Read(text).Lines);

    public static LineQuestion Question(string text)
    {
        var drink = Read(text);
        Assert.Empty(drink.Lines);
        return Assert.Single(drink.Questions);
    }

    public static string Key(DraftLine line) => Seed.Pantry.Find(line.Ingredient)!.Key;

    public static string[] Keys(LineQuestion question) => [.. question.Candidates.Select(c => c.Line is null ? "new" : Key(c.Line))];
}
