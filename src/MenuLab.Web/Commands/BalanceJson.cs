using System.Text.Encodings.Web;
using System.Text.Json;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;
using MenuLab.Web.Features.Bench;

namespace MenuLab.Web.Commands;

/// <summary>Writes drinks and their balance as JSON: an array of drinks, stable snake_case keys (docs/balance-json.md). Unknown is null, never zero.</summary>
internal static class BalanceJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(Stream output, IReadOnlyList<WorkedDrink> drinks, PantryList pantry)
    {
        using var json = new Utf8JsonWriter(output, Options);
        json.WriteStartArray();
        foreach (var drink in drinks)
        {
            WriteDrink(json, drink, pantry);
        }
        json.WriteEndArray();
    }

    private static void WriteDrink(Utf8JsonWriter json, WorkedDrink drink, PantryList pantry)
    {
        json.WriteStartObject();
        json.WriteString("name", drink.Read.Name);
        json.WriteStartArray("lines");
        for (var i = 0; i < drink.Read.Lines.Count; i++)
        {
            WriteLine(json, drink, i, pantry);
        }
        json.WriteEndArray();

        json.WriteStartArray("questions");
        foreach (var question in drink.Read.Questions)
        {
            json.WriteStartObject();
            json.WriteString("text", question.Text);
            json.WriteString("asks", question.Asks);
            json.WriteStartArray("candidates");
            foreach (var candidate in question.Candidates)
            {
                json.WriteStartObject();
                json.WriteString("label", candidate.Label);
                WriteText(json, "key", candidate.Line is null ? null : pantry.Find(candidate.Line.Ingredient)?.Key);
                WriteNumber(json, "volume_ml", candidate.Line?.Millilitres ?? double.NaN);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteNumber("line", question.Line);
            json.WriteNumber("column", question.Column);
            json.WriteEndObject();
        }
        json.WriteEndArray();

        json.WriteStartArray("unread");
        foreach (var unread in drink.Read.Unread)
        {
            json.WriteStartObject();
            json.WriteString("text", unread.Text);
            json.WriteString("reason", unread.Reason);
            json.WriteNumber("line", unread.Line);
            json.WriteNumber("column", unread.Column);
            json.WriteEndObject();
        }
        json.WriteEndArray();

        WriteBuild(json, drink.Read.Build);
        if (drink.Read.Yield is { } yield)
        {
            json.WriteStartObject("yield");
            json.WriteString("text", yield.Text);
            WriteNumber(json, "drinks", yield.Drinks);
            WriteNumber(json, "volume_ml", yield.Millilitres);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("yield");
        }
        WriteTexts(json, "notes", drink.AllNotes());

        json.WriteStartObject("metrics");
        WriteMetrics(json, "mixed", drink.Balance.Mixed);
        if (drink.Balance.Served is { } served)
        {
            WriteMetrics(json, "served", served);
        }
        else
        {
            json.WriteNull("served");
        }
        json.WriteEndObject();

        WriteAllergens(json, drink);
        WriteCautions(json, drink);
        json.WriteNumber("engine_version", BalanceEngine.Version);
        json.WriteEndObject();
    }

    private static void WriteLine(Utf8JsonWriter json, WorkedDrink drink, int index, PantryList pantry)
    {
        var line = drink.Read.Lines[index];
        var ingredient = pantry.Find(line.Ingredient)!;
        // A top to the wash line has the mass that the glass asked for, once there is a served state.
        var grams = line.IsTopUp ? drink.Balance.TopUpGrams : line.Grams;
        var millilitres = line.IsTopUp ? grams / ingredient.Composition.GramsPerMillilitre : line.Millilitres;
        json.WriteStartObject();
        json.WriteString("text", line.Text);
        json.WriteString("ingredient", ingredient.Name);
        json.WriteString("key", ingredient.Key);
        WriteNumber(json, "volume_ml", millilitres);
        WriteNumber(json, "mass_g", grams);
        json.WriteString("place", Word(line.Place));
        json.WriteString("joins", Word(line.Joins));
        WriteNumber(json, "start_c", line.StartCelsius);
        WriteText(json, "treatment", line.Treatment.Length == 0 ? null : line.Treatment);
        WriteTexts(json, "assumptions", line.Assumptions);
        json.WriteEndObject();
    }

    private static void WriteBuild(Utf8JsonWriter json, Build build)
    {
        json.WriteStartObject("build");
        WriteText(json, "method", build.Method);
        WriteNumber(json, "seconds", build.Seconds ?? double.NaN);
        WriteText(json, "ice", build.Ice);
        WriteText(json, "glass", build.Glass);
        WriteText(json, "strain", build.Strain);
        WriteText(json, "served_on", build.ServedOn);
        WriteTexts(json, "steps", build.Steps);
        json.WriteEndObject();
    }

    private static void WriteMetrics(Utf8JsonWriter json, string name, MetricSet set)
    {
        json.WriteStartObject(name);
        foreach (var info in Metrics.All)
        {
            var estimate = set[info.Metric];
            json.WriteStartObject(info.Key);
            WriteNumber(json, "value", estimate.Value);
            WriteNumber(json, "low", estimate.Low);
            WriteNumber(json, "high", estimate.High);
            json.WriteString("unit", info.Unit);
            WriteNumber(json, "unknown_percent", Math.Round(estimate.UnknownPercent, 3));
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static void WriteAllergens(Utf8JsonWriter json, WorkedDrink drink)
    {
        json.WriteStartArray("allergens");
        foreach (var allergen in Enum.GetValues<Allergen>())
        {
            var state = drink.Balance.Allergens[allergen];
            json.WriteStartObject();
            json.WriteString("key", Word(allergen));
            json.WriteString("state", Word(state));
            WriteTexts(json, "by", state == AllergenState.Absent ? [] : drink.LinesWith(allergen, state).Select(l => l.Text));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteCautions(Utf8JsonWriter json, WorkedDrink drink)
    {
        json.WriteStartArray("cautions");
        foreach (var caution in drink.Cautions)
        {
            json.WriteStartObject();
            json.WriteString("key", caution.Key);
            json.WriteString("text", caution.Text);
            WriteTexts(json, "by", caution.Lines.Select(i => drink.Read.Lines[drink.Weighed.From[i]].Text));
            json.WriteString("source", caution.Source);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private static void WriteNumber(Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void WriteText(Utf8JsonWriter json, string name, string? value)
    {
        if (value is null)
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteString(name, value);
        }
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }
        json.WriteEndArray();
    }
}
