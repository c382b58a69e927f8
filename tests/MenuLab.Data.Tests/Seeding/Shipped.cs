using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;
using MenuLab.Data.Seeding;

namespace MenuLab.Data.Tests.Seeding;

/// <summary>The shipped data, read once, and what one asks of an ingredient.</summary>
internal static class Shipped
{
    public static SeedData Data { get; } = SeedData.Load(SeedData.DefaultFolder);

    public static Ingredient The(string key) => Data.Pantry.Find(key) ?? throw new ArgumentException($"No ingredient is called {key}.", nameof(key));

    public static IngredientFigure? Figure(this Ingredient ingredient, string quantity) => ingredient.Figures.SingleOrDefault(f => f.Quantity == quantity);

    public static BuiltComposition Rebuilt(this Ingredient ingredient) =>
        CompositionBuilder.Build(ingredient.Kind, ingredient.Basis, ingredient.Figures, ingredient.Composition.Allergens);

    /// <summary>g (mol, mg) of a component in 100 g.</summary>
    public static double Per100Grams(this Ingredient ingredient, Component component) => 100 * ingredient.Composition.PerGram[(int)component];

    public static double Form(this Ingredient ingredient, LinearForm form) => ingredient.Composition.Forms[(int)form];

    public static double AbvPercent(this Ingredient ingredient) =>
        100 * ingredient.Form(LinearForm.EthanolMillilitres) * ingredient.Composition.GramsPerMillilitre;

    /// <summary>Acids in mol/L, carbon dioxide left out as a sample is degassed before its pH is read.</summary>
    public static double[] AcidsPerLitre(this Ingredient ingredient)
    {
        var acids = new double[Components.AcidCount];
        for (var a = 0; a < acids.Length - 1; a++)
        {
            acids[a] = 1000 * ingredient.Composition.GramsPerMillilitre * ingredient.Composition.PerGram[(int)Components.FirstAcid + a];
        }
        return acids;
    }

    public static double ChargePerLitre(this Ingredient ingredient) =>
        1000 * ingredient.Composition.GramsPerMillilitre * ingredient.Composition.PerGram[(int)Component.Charge];
}
