using System.Text.Json;
using System.Text.Json.Serialization;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Preps;

/// <summary>
/// Recipe versions as text: UTF-8 JSON that begins with its format, snake_case, keys in a fixed order, numbers in shortest round-trip form, absent =
/// not given. Every format ever released is read for ever; what is stored is never rewritten.
/// </summary>
public static class RecipeText
{
    /// <summary>The format that is written today.</summary>
    public const int Newest = 1;

    /// <summary>The canonical text of a recipe version; the same recipe gives the same bytes.</summary>
    public static byte[] Write(RecipeVersion recipe) => JsonSerializer.SerializeToUtf8Bytes(RecipeFormat1.Of(recipe), RecipeJson.Default.RecipeFormat1);

    /// <summary>The recipe version of a text.</summary>
    /// <exception cref="JsonException">It is no recipe, in a format that only a newer version knows, or one that could not have been made.</exception>
    public static RecipeVersion Read(ReadOnlySpan<byte> text)
    {
        var document = JsonSerializer.Deserialize(text, RecipeJson.Default.RecipeFormat1);
        return document is { Format: Newest }
            ? document.Lift()
            : throw new JsonException($"This recipe is in format {document?.Format}; this version knows 1 to {Newest}.");
    }
}

// Format 1, as released, with types of its own. Never change what stands here: write a format 2 beside it.
internal sealed record RecipeFormat1
{
    public required int Format { get; init; }

    public required Guid Prep { get; init; }

    public required int Number { get; init; }

    public required string Name { get; init; }

    public required RecipeLineFormat1[] Lines { get; init; }

    public required RecipeStepFormat1[] Steps { get; init; }

    public static RecipeFormat1 Of(RecipeVersion recipe) => new()
    {
        Format = 1,
        Prep = recipe.Prep.Value,
        Number = recipe.Number,
        Name = recipe.Name,
        Lines = [.. recipe.Lines.Select(l => new RecipeLineFormat1(l.Ingredient.Value, l.Grams, l.Solid, l.Text, l.GramsUncertainty))],
        Steps = [.. recipe.Steps.Select(RecipeStepFormat1.Of)],
    };

    public RecipeVersion Lift()
    {
        if (Number < 1)
        {
            throw new JsonException("A recipe's number starts at 1.");
        }
        var made = RecipeVersion.Make(
            new IngredientId(Prep), Number, Name,
            [.. Lines.Select(l => new PrepLine(new IngredientId(l.Ingredient), l.G, l.Solid, l.Text) { GramsUncertainty = l.GUncertainty })],
            [.. Steps.Select(s => s.Lift())]);
        return made.IsOk ? made.Value : throw new JsonException($"{made.Problems[0].Field}: {made.Problems[0].Message}");
    }
}

internal sealed record RecipeLineFormat1(Guid Ingredient, double G, SolidKind Solid, string Text, double GUncertainty);

// One flat shape for all steps: what a step does not have is absent.
internal sealed record RecipeStepFormat1
{
    public required string Step { get; init; }

    public int[]? Lines { get; init; }

    public double? Minutes { get; init; }

    public double? Hours { get; init; }

    public double? Days { get; init; }

    public double? C { get; init; }

    public double? GPerMinute { get; init; }

    public double? Watts { get; init; }

    public Hob? Hob { get; init; }

    public double? PanCm { get; init; }

    public bool? Lid { get; init; }

    public SteepStop? Stop { get; init; }

    public LeafCut? Cut { get; init; }

    public bool? InBag { get; init; }

    public double? Yield { get; init; }

    public StrainerMesh? Mesh { get; init; }

    public bool? Pressed { get; init; }

    public ClarifiedBy? By { get; init; }

    public ReduceTo? To { get; init; }

    public double? Target { get; init; }

    public double? Volumes { get; init; }

    public double? GaugeBar { get; init; }

    public double? WeighedG { get; init; }

    public string? Remark { get; init; }

    public static RecipeStepFormat1 Of(PrepStep step)
    {
        var format = new RecipeStepFormat1 { Step = step.Word, WeighedG = step.WeighedGrams, Remark = step.Remark.Length == 0 ? null : step.Remark };
        return step switch
        {
            AddingStep s => format with { Lines = [.. s.Lines] },
            Toast s => format with { Minutes = s.Minutes, C = s.Celsius },
            Heat s => format with
            {
                Minutes = s.Minutes, C = s.Celsius, GPerMinute = s.GramsPerMinute, Watts = s.Watts, Hob = s.Hob, PanCm = s.PanCentimetres, Lid = s.Lid,
            },
            Steep s => format with { Minutes = s.Minutes, C = s.Celsius, Stop = s.Stop, Cut = s.Cut, InBag = s.InBag },
            Rest s => format with { Hours = s.Hours, C = s.Celsius },
            Blend s => format with { Minutes = s.Minutes },
            Press s => format with { Yield = s.Yield },
            Strain s => format with { Mesh = s.Mesh, Pressed = s.Pressed },
            Clarify s => format with { By = s.By },
            Reduce s => format with { To = s.To, Target = s.Target },
            Carbonate s => format with { Volumes = s.Volumes, GaugeBar = s.GaugeBar, C = s.Celsius },
            Chill s => format with { C = s.Celsius },
            Ferment s => format with { Days = s.Days, C = s.Celsius },
            _ => throw new InvalidOperationException($"No format for {step.Word}."),
        };
    }

    public PrepStep Lift()
    {
        PrepStep step = Step switch
        {
            "combine" => new Combine(Lines ?? []),
            "dissolve" => new Dissolve(Lines ?? []),
            "dilute" => new Dilute(Lines ?? []),
            "acidify" => new Acidify(Lines ?? []),
            "toast" => new Toast(Minutes.GetValueOrDefault(), C),
            "heat" => new Heat(Minutes.GetValueOrDefault())
            {
                Celsius = C ?? 100, GramsPerMinute = GPerMinute, Watts = Watts, Hob = Hob ?? default, PanCentimetres = PanCm, Lid = Lid ?? false,
            },
            "steep" => new Steep(Minutes.GetValueOrDefault(), C.GetValueOrDefault(), Stop ?? default, Cut ?? default, InBag ?? false),
            "rest" => new Rest(Hours.GetValueOrDefault(), C.GetValueOrDefault()),
            "blend" => new Blend(Minutes.GetValueOrDefault()),
            "press" => new Press(Yield),
            "strain" => new Strain(Mesh ?? default, Pressed ?? true),
            "clarify" => new Clarify(By ?? default),
            "reduce" => new Reduce(To ?? default, Target.GetValueOrDefault()),
            "carbonate" => new Carbonate(Volumes, GaugeBar, C),
            "chill" => new Chill(C.GetValueOrDefault()),
            "ferment" => new Ferment(Days.GetValueOrDefault(), C.GetValueOrDefault()),
            _ => throw new JsonException($"This version knows no step \"{Step}\"."),
        };
        return step with { WeighedGrams = WeighedG, Remark = Remark ?? "" };
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, Converters = [
    typeof(WordOf<SolidKind>), typeof(WordOf<Hob>), typeof(WordOf<SteepStop>), typeof(WordOf<LeafCut>), typeof(WordOf<StrainerMesh>), typeof(WordOf<ClarifiedBy>),
    typeof(WordOf<ReduceTo>)])]
[JsonSerializable(typeof(RecipeFormat1))]
internal sealed partial class RecipeJson : JsonSerializerContext;
