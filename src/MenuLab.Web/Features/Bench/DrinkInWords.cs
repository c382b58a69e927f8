using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Pantry;

namespace MenuLab.Web.Features.Bench;

/// <summary>A worked drink as pages show it.</summary>
/// <param name="house">Where ingredients are found.</param>
/// <param name="answers">How an answer to a question is written.</param>
/// <param name="words">How lines are written.</param>
public sealed class DrinkInWords(HouseStock house, AnswerWording answers, LineWords words)
{
    /// <summary>A drink in words.</summary>
    public TypedDrink Of(WorkedDrink worked)
    {
        var hasLiquid = worked.Weighed.Lines.Any(line => line.IsInLiquid);
        return new TypedDrink
        {
            Name = worked.Read.Name,
            Rows = Rows(worked, hasLiquid),
            Build = BuildInWords.Of(worked.Read, worked.Weighed.Build, words.Format),
            Steps = worked.Read.Build.Steps,
            Notes = [.. worked.Read.Notes, .. worked.Weighed.Notes],
            Mixed = hasLiquid ? Figures(worked.Balance.Mixed) : null,
            Served = hasLiquid && worked.Balance.Served is { } served ? Figures(served) : null,
            ServedMissingBecause = hasLiquid ? worked.Balance.ServedMissingBecause : "",
            WashLineMillilitres = worked.Weighed.Build.Glass?.WashLineMillilitres ?? double.NaN,
            Present = Allergens(worked, AllergenState.Present),
            NotKnown = Allergens(worked, AllergenState.Unknown),
            Cautions =
            [
                .. worked.Cautions
                    .Select(c => new CautionRow(c.Text, Names(c.Lines.Select(place => worked.Weighed.Lines[place].Ingredient)), c.Source)),
            ],
        };
    }

    private List<string> Names(IEnumerable<IngredientId> ingredients) => [.. ingredients.Distinct().Select(id => house.Pantry.Find(id)!.Name)];

    private List<AllergenRow> Allergens(WorkedDrink worked, AllergenState state) =>
        [.. from allergen in Enum.GetValues<Allergen>()
            where worked.Balance.Allergens[allergen] == state
            select new AllergenRow(allergen, Names(worked.LinesWith(allergen, state).Select(line => line.Ingredient)))];

    private static Figure[] Figures(MetricSet set) => [.. Metrics.All.Select(info => new Figure(info, set[info.Metric], set.Caveats(info.Metric)))];

    private IReadOnlyList<Row> Rows(WorkedDrink worked, bool hasLiquid)
    {
        var place = 0;
        return worked.Read.InOrder<Row>(line => ReadRow(line, Shares(worked, hasLiquid, place++)), AskedRow, unread => new UnreadRow(unread.Text, unread.Reason));
    }

    private static double[] Shares(WorkedDrink worked, bool hasLiquid, int line)
    {
        var place = Array.IndexOf(worked.Weighed.From, line);
        return !hasLiquid || place < 0 || !worked.Weighed.Lines[place].IsInLiquid
            ? []
            : [.. Metrics.All.Select(info => worked.Balance.Share(place, info.Metric))];
    }

    private ReadRow ReadRow(DraftLine line, double[] shares) => new(line.Text)
    {
        Amount = words.Amount(line),
        Other = words.Other(line),
        Ingredient = house.Pantry.Find(line.Ingredient)!.Name,
        Treatment = line.Treatment,
        StartsAt = LineWords.StartsAt(line.StartCelsius),
        StartsDegrees = words.Format.Degrees(line.StartCelsius),
        Place = LineWords.Of(line.Place),
        Joins = LineWords.Of(line.Joins),
        Assumptions = line.Assumptions,
        Shares = shares,
    };

    private AskedRow AskedRow(LineQuestion question) =>
        new(question.Text, question.Line, question.Asks,
            answers.Of(question));
}
