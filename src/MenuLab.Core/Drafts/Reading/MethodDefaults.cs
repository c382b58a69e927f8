using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts.Reading;

/// <summary>What a method takes for granted of a line that says nothing else.</summary>
public static class MethodDefaults
{
    private const string HotMethod = "hot";

    // Common practice, no source: just off the boil.
    private const double HotCelsius = 90;

    /// <summary>When a line joins: what is full of gas is not shaken, it joins in the glass or on top. Null for "mixed", as everything else.</summary>
    /// <param name="ingredient">What it is.</param>
    /// <param name="method">The method; null where none is chosen.</param>
    public static Joins? Joins(Ingredient ingredient, MethodModel? method)
    {
        // Beer and sparkling wine are now and then stirred in on purpose; only a named method decides for them.
        var fizzy = ingredient.Kind == IngredientKind.Carbonated || (method is not null && ingredient.Composition.Caveats.HasFlag(CompositionCaveats.Carbonated));
        return !fizzy ? null : method is { InTheGlass: true } ? Drafts.Joins.InTheGlass : Drafts.Joins.OnTop;
    }

    /// <summary>Temperature at which a line of a hot drink starts, °C; null where it starts as it is kept.</summary>
    /// <param name="ingredient">What it is.</param>
    /// <param name="method">The method; null where none is chosen.</param>
    public static double? StartCelsius(Ingredient ingredient, MethodModel? method) =>
        method?.Key == HotMethod && ingredient.Kind is IngredientKind.TeaOrCoffee or IngredientKind.Water ? HotCelsius : null;

    /// <summary>
    /// A line of a working copy after the draft chose another method: what stood as the old method takes for granted stands
    /// as the new one does; what somebody chose stays.
    /// </summary>
    /// <param name="content">The line.</param>
    /// <param name="ingredient">What it is.</param>
    /// <param name="before">The method until now.</param>
    /// <param name="after">The method from now on.</param>
    /// <returns>The fields that change, with the line as it then is; no field where nothing does.</returns>
    public static (LineFields Fields, LineContent Content) After(LineContent content, Ingredient ingredient, MethodModel? before, MethodModel? after)
    {
        if (content.Place != Place.In)
        {
            return (LineFields.None, content);
        }
        var fields = LineFields.None;
        var (joinsBefore, joinsAfter) = (Joins(ingredient, before) ?? Drafts.Joins.Mixed, Joins(ingredient, after) ?? Drafts.Joins.Mixed);
        if (content.Joins == joinsBefore && joinsBefore != joinsAfter)
        {
            (fields, content) = (fields | LineFields.Joins, content with { Joins = joinsAfter });
        }
        var (startBefore, startAfter) = (StartCelsius(ingredient, before) ?? ingredient.KeptAtCelsius, StartCelsius(ingredient, after) ?? ingredient.KeptAtCelsius);
        if (content.StartCelsius is { } start && start.Equals(startBefore) && !startBefore.Equals(startAfter))
        {
            (fields, content) = (fields | LineFields.Start, content with { StartCelsius = startAfter });
        }
        return (fields, content);
    }
}
