using MenuLab.Web.Accounts;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;

namespace MenuLab.Web.Health;

/// <summary>/health/live: the process answers. /health/ready: it can do its work.</summary>
internal static class HealthRoutes
{
    /// <summary>Tag of the checks that /health/ready asks.</summary>
    public const string Ready = "ready";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).RequireAuthorization(May.Everyone);
        routes.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains(Ready) })
            .RequireAuthorization(May.Everyone);
    }
}
