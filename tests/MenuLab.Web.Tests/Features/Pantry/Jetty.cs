using MenuLab.Core.Pantry;
using MenuLab.Data.Pantry;

namespace MenuLab.Web.Tests.Features.Pantry;

/// <summary>Ingredients of an invented bar at a jetty.</summary>
internal static class Jetty
{
    /// <summary>A juice with figures per 100 g.</summary>
    public static Ingredient Juice(params IngredientFigure[] figures) => Made(IngredientKind.Juice, CompositionBuilder.PerMass, figures);

    public static Ingredient Made(IngredientKind kind, string basis, params IngredientFigure[] figures) => new()
    {
        Id = IngredientId.New(), Key = Guid.NewGuid().ToString(), Name = "Sea buckthorn juice", Kind = kind, Basis = basis, KeptAtCelsius = 4, Figures = figures,
        Composition = CompositionBuilder.Build(kind, basis, figures, default).Composition,
    };

    public static IngredientFigure Shipped(string quantity, double value, double low = double.NaN, double high = double.NaN) =>
        new(quantity, value, low, high, "a table", FigureStatus.Confirmed, "shipped 1");

    public static IngredientFigure Own(string quantity, double value) => new(quantity, value, double.NaN, double.NaN, "label", FigureStatus.Confirmed, PantryWriting.House);

    public static IngredientFigure Read(string quantity, double value) => new(quantity, value, double.NaN, double.NaN, "read here", FigureStatus.Measured, PantryWriting.Reading);
}
