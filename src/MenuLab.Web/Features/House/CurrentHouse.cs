namespace MenuLab.Web.Features.House;

/// <summary>
/// The house that a page or a request works with: the one shown when it began, to its end, so that no edit of an open
/// page lands in another bar's database.
/// </summary>
public sealed class CurrentHouse(Houses houses)
{
    /// <summary>The house.</summary>
    public OpenHouse House { get; } = houses.Current;

    /// <summary>Its newest book.</summary>
    public HouseBook Book => House.Book;
}
