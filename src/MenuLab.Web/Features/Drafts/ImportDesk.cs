using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Exchange;
using MenuLab.Core.House;
using MenuLab.Data.Drafts;
using MenuLab.Web.Accounts;
using MenuLab.Web.Commands;
using MenuLab.Web.Features.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>A file as it was handed over, or why it was not taken.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its content; empty where it was not taken.</param>
/// <param name="Refused">Null, or why it was not taken.</param>
public sealed record HandedFile(string Name, byte[] Bytes, FileProblem? Refused = null);

/// <summary>A file as read.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Problem">Null, or where and why it cannot be read.</param>
/// <param name="Remarks">What was left out.</param>
/// <param name="Drinks">Its drinks.</param>
public sealed record IncomingFile(string Name, FileProblem? Problem, IReadOnlyList<string> Remarks, IReadOnlyList<OfferedDrink> Drinks);

/// <summary>A drink of a file, offered to be brought in.</summary>
/// <param name="Drink">The drink.</param>
/// <param name="IsThere">A draft of this name is there already.</param>
/// <param name="Problem">Null, or why a draft cannot hold it.</param>
public sealed record OfferedDrink(IncomingDrink Drink, bool IsThere, string? Problem);

/// <summary>Reads files into drinks to look at. Stores nothing.</summary>
public sealed class ImportDesk(CurrentHouse current, CurrentPerson person)
{
    /// <summary>Reads files by the names of this house.</summary>
    public async Task<IReadOnlyList<IncomingFile>> ReadAsync(IReadOnlyList<HandedFile> files, ReadSettings settings, CancellationToken cancellation = default)
    {
        await using var db = current.House.Read();
        var there = (await db.ListDrafts()).Select(d => SearchName.Of(d.Name)).ToHashSet();
        var reader = current.Book.Reader;
        // A book of drinks takes a moment; the page goes on meanwhile.
        return await Task.Run<IReadOnlyList<IncomingFile>>(() => [.. files.Select(file => Read(file, reader, settings, there, person.Id))], cancellation);
    }

    private static IncomingFile Read(HandedFile file, DrinkReader reader, ReadSettings settings, HashSet<string> there, PersonId by)
    {
        if (file.Refused is not null)
        {
            return new IncomingFile(file.Name, file.Refused, [], []);
        }
        var read = DrinkFile.Read(file.Name, file.Bytes, reader, settings);
        return new IncomingFile(file.Name, read.Problem, read.Remarks, [.. read.Drinks.Select(IncomingDrink.Of).Select(d => Offer(d, there, by))]);
    }

    /// <summary>A drink with what speaks against bringing it in.</summary>
    /// <param name="drink">The drink.</param>
    /// <param name="there">Names of the drafts that are there, as databases search.</param>
    /// <param name="by">Who brings it in.</param>
    internal static OfferedDrink Offer(IncomingDrink drink, IReadOnlySet<string> there, PersonId by) =>
        new(drink, there.Contains(SearchName.Of(drink.Name)), drink.IsEmpty ? "There is no line in it." : drink.Problem(by));
}
