using System.Security.Claims;
using MenuLab.Core.House;
using MenuLab.Data.House;

namespace MenuLab.Web.Accounts;

/// <summary>
/// The one place that says who is here. Without accounts that is the person at this machine; accounts replace the
/// inside of this class and nothing else.
/// </summary>
public sealed class CurrentPerson
{
    /// <summary>Identity, as rows that say by whom hold it.</summary>
    public PersonId Id { get; } = FirstRows.AtThisMachine;

    /// <summary>Name as shown.</summary>
    public string Name { get; } = "the person at this machine";

    /// <summary>The same person as the framework wants it.</summary>
    public ClaimsPrincipal AsPrincipal(string scheme) =>
        new(new ClaimsIdentity([new Claim(ClaimTypes.Name, Name)], scheme));
}
