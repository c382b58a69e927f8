using System.Security.Claims;

namespace MenuLab.Web.Accounts;

/// <summary>
/// The one place that says who is here. Without accounts that is the person at this machine; accounts replace the
/// inside of this class and nothing else.
/// </summary>
public sealed class CurrentPerson
{
    /// <summary>Name as shown.</summary>
    public string Name { get; } = "the person at this machine";

    /// <summary>The same person as the framework wants it.</summary>
    public ClaimsPrincipal AsPrincipal(string scheme) =>
        new(new ClaimsIdentity([new Claim(ClaimTypes.Name, Name)], scheme));
}
