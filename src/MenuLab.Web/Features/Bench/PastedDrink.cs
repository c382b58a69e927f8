using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>Reads a typed or pasted drink and works out its balance. Keeps nothing; safe for any number of pages at once.</summary>
/// <param name="house">What the house has.</param>
/// <param name="reader">Reads by the names of this house.</param>
/// <param name="format">How the house writes figures.</param>
/// <param name="grid">How it pours.</param>
public sealed class PastedDrink(HouseStock house, DrinkReader reader, HouseFormat format, PourGrid grid)
{
    private readonly AnswerWording _answers = new(reader, house.Pantry);

    /// <summary>A text read and worked out, as the engine has it.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="bareNumber">Unit of a bare number.</param>
    public WorkedDrink Work(string text, Unit bareNumber) => WorkedDrink.Of(reader.Read(text, new ReadSettings { BareNumber = bareNumber }), house);

    /// <summary>What a text says, and what that comes to.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="bareNumber">Unit of a bare number, and the unit that amounts are shown in first: mL or fluid ounce.</param>
    public TypedDrink Read(string text, Unit bareNumber) => InWords(bareNumber).Of(Work(text, bareNumber));

    /// <summary>Puts a worked drink into words.</summary>
    /// <param name="first">The unit that amounts are shown in first.</param>
    public DrinkInWords InWords(Unit first) => new(house, _answers, new LineWords(format, grid, first));
}
