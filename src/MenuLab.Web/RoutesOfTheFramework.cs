using MenuLab.Web.Accounts;
using Microsoft.AspNetCore.Authorization;

namespace MenuLab.Web;

/// <summary>Routes that the framework maps by itself (the page's socket, its script) name no policy; a page does.</summary>
internal static class RoutesOfTheFramework
{
    /// <summary>Gives a route without a policy that of the drinks: the socket serves nothing else.</summary>
    public static void AreForWhoeverMayReadDrinks(EndpointBuilder route)
    {
        if (!route.Metadata.OfType<IAuthorizeData>().Any())
        {
            route.Metadata.Add(new AuthorizeAttribute(May.ReadDrinks));
        }
    }
}
