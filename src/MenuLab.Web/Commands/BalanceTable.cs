using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Commands;

/// <summary>Writes drinks and their balance as plain text, for a terminal at least 80 wide.</summary>
internal static class BalanceTable
{
    public static void Write(TextWriter output, IReadOnlyList<WorkedDrink> drinks, PantryList pantry)
    {
        for (var i = 0; i < drinks.Count; i++)
        {
            if (i > 0)
            {
                output.WriteLine();
            }
            WriteDrink(output, drinks[i], pantry);
        }
    }

    private static void WriteDrink(TextWriter output, WorkedDrink drink, PantryList pantry)
    {
        output.WriteLine(drink.Read.Name.Length > 0 ? drink.Read.Name : "(no name)");
        foreach (var line in drink.Read.Lines)
        {
            output.WriteLine($"  {Amount(line, drink),10}  {pantry.Find(line.Ingredient)!.Name}{Where(line)}");
            foreach (var assumption in line.Assumptions)
            {
                output.WriteLine($"              ({assumption})");
            }
        }
        foreach (var question in drink.Read.Questions)
        {
            output.WriteLine($"           ?  \"{question.Text}\": {question.Asks}");
            output.WriteLine($"              {string.Join(" | ", question.Candidates.Select(c => c.Label))}");
        }
        foreach (var unread in drink.Read.Unread)
        {
            output.WriteLine($"           !  \"{unread.Text}\": {unread.Reason}");
        }
        WriteBuild(output, drink.Read.Build);
        output.WriteLine();
        WriteMetrics(output, drink.Balance);
        WriteAllergens(output, drink);
        foreach (var caution in drink.Cautions)
        {
            output.WriteLine($"  Caution: {caution.Text} [{caution.Source}]");
        }
        foreach (var note in drink.AllNotes())
        {
            output.WriteLine($"  Note: {note}");
        }
    }

    private static string Amount(DraftLine line, WorkedDrink drink)
    {
        if (line.IsTopUp)
        {
            return double.IsFinite(drink.Balance.TopUpGrams) ? $"top {HouseFormat.Plain.Number(drink.Balance.TopUpGrams, 0)} g" : "top";
        }
        return double.IsFinite(line.Millilitres) && line.Unit is not (Unit.Gram or Unit.Kilogram or Unit.WeightOunce or Unit.Pound)
            ? $"{HouseFormat.Plain.Number(line.Millilitres, 1)} mL"
            : double.IsFinite(line.Grams) ? $"{HouseFormat.Plain.Number(line.Grams, 1)} g" : "-";
    }

    private static string Where(DraftLine line)
    {
        var place = line.Place switch
        {
            Place.Rinse => ", rinse",
            Place.Rim => ", rim",
            Place.Garnish => ", garnish",
            Place.Beside => ", beside",
            _ => line.Joins switch { Joins.InTheGlass => ", in the glass", Joins.OnTop => ", on top", _ => "" },
        };
        return (line.Treatment.Length > 0 ? $" ({line.Treatment})" : "") + place;
    }

    private static void WriteBuild(TextWriter output, Build build)
    {
        var said = new[]
        {
            build.Method, build.Seconds is { } s ? $"{HouseFormat.Plain.Number(s, 0)} s" : null, build.Ice is { } ice ? $"ice {ice}" : null, build.Strain,
            build.Glass is { } glass ? $"glass {glass}" : null, build.ServedOn is { } on ? $"served on {on}" : null,
        }.Where(t => t is not null).Select(t => t!.Replace('_', ' '));
        var text = string.Join(", ", said);
        if (text.Length > 0)
        {
            output.WriteLine($"  Build: {text}");
        }
    }

    private static void WriteMetrics(TextWriter output, DrinkBalance balance)
    {
        output.WriteLine($"  {"",-24}{"mixed",-14}{"likely",-16}{(balance.Served is null ? "" : "served"),-14}{(balance.Served is null ? "" : "likely")}");
        foreach (var info in Metrics.All)
        {
            var mixed = balance.Mixed[info.Metric];
            var served = balance.Served?[info.Metric];
            if (IsIdle(mixed) && (served is null || IsIdle(served.Value)))
            {
                continue;
            }
            output.WriteLine(
                $"  {info.Name,-24}{HouseFormat.Plain.Value(mixed, info.Digits),-14}{HouseFormat.Plain.Likely(mixed, info.Digits),-16}"
                + (served is { } s ? $"{HouseFormat.Plain.Value(s, info.Digits),-14}{HouseFormat.Plain.Likely(s, info.Digits),-16}" : "")
                + info.Unit);
        }
    }

    // A row that says nothing in either state: exactly zero, or it does not apply (dilution before any ice).
    private static bool IsIdle(Core.Quantities.Estimate estimate) =>
        (estimate.Value == 0 && estimate.High == 0 && estimate.UnknownPercent == 0) || (double.IsNaN(estimate.Value) && estimate.UnknownPercent == 0);

    private static void WriteAllergens(TextWriter output, WorkedDrink drink)
    {
        Line("Contains", AllergenState.Present);
        Line("Unknown, read the label", AllergenState.Unknown);

        void Line(string what, AllergenState state)
        {
            // A label that nobody has read leaves every allergen open at once: those with the same lines stand together.
            var named = Enum.GetValues<Allergen>().Where(a => drink.Balance.Allergens[a] == state)
                .GroupBy(a => string.Join(", ", drink.LinesWith(a, state).Select(l => l.Text.Trim())), AllergenWords.Of)
                .Select(g => $"{string.Join(", ", g)} ({g.Key})");
            var text = string.Join("; ", named);
            if (text.Length > 0)
            {
                output.WriteLine($"  {what}: {text}");
            }
        }
    }
}
