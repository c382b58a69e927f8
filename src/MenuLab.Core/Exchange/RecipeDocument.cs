using System.Globalization;
using System.Text.Json;

namespace MenuLab.Core.Exchange;

/// <summary>Reads drinks out of a schema.org Recipe document (JSON-LD). Source of the property names: schema.org/Recipe.</summary>
public static class RecipeDocument
{
    /// <summary>The drinks of a document: one Recipe, an array of them, or a graph that holds some.</summary>
    /// <param name="json">The document.</param>
    /// <param name="drinks">The drinks in the order of the document; empty when there is a problem.</param>
    /// <returns>Null, or where the document cannot be read.</returns>
    public static FileProblem? Read(string json, out IReadOnlyList<DrinkText> drinks)
    {
        var found = new List<DrinkText>();
        drinks = found;
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            Collect(document.RootElement, found);
        }
        catch (JsonException e)
        {
            // The parser counts both from 0 and the column in bytes.
            return new FileProblem((int)(e.LineNumber ?? 0) + 1, (int)(e.BytePositionInLine ?? 0) + 1, "This is not complete JSON: check for a missing bracket, quote or comma here.");
        }
        return found.Count > 0 ? null : new FileProblem(1, 1, "No object with \"@type\": \"Recipe\" is in this document.");
    }

    private static void Collect(JsonElement element, List<DrinkText> found)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
            {
                Collect(item, found);
            }
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            if (element.TryGetProperty("@graph", out var graph))
            {
                Collect(graph, found);
            }
            if (IsRecipe(element))
            {
                found.Add(Drink(element));
            }
        }
    }

    private static bool IsRecipe(JsonElement element) =>
        element.TryGetProperty("@type", out var type) && Texts(type).Any(t => t is "Recipe" or "schema:Recipe" or "http://schema.org/Recipe" or "https://schema.org/Recipe");

    private static DrinkText Drink(JsonElement recipe)
    {
        var lines = new List<string>();
        lines.AddRange(Property(recipe, "recipeIngredient"));
        if (lines.Count == 0)
        {
            // The name that the property had before; still met in old documents.
            lines.AddRange(Property(recipe, "ingredients"));
        }
        lines.AddRange(Property(recipe, "recipeInstructions"));
        lines.AddRange(Property(recipe, "recipeYield").Select(y => "yield " + y).Take(1));
        var name = Property(recipe, "name").FirstOrDefault() ?? "";
        return new DrinkText(name, string.Join('\n', lines), 1);
    }

    private static IEnumerable<string> Property(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) ? Texts(value) : [];

    // A property is a string, a number, a list of these, or steps and sections that hold a text and further items.
    private static IEnumerable<string> Texts(JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.String:
                foreach (var line in value.GetString()!.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
                {
                    yield return line;
                }
                break;
            case JsonValueKind.Number:
                yield return value.GetDouble().ToString(CultureInfo.InvariantCulture);
                break;
            case JsonValueKind.Array:
                foreach (var text in value.EnumerateArray().SelectMany(Texts))
                {
                    yield return text;
                }
                break;
            case JsonValueKind.Object:
                foreach (var text in Property(value, "text").Concat(Property(value, "itemListElement")))
                {
                    yield return text;
                }
                break;
        }
    }
}
