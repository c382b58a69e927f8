using MenuLab.Web.Features.Bench;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace MenuLab.Web.Health;

/// <summary>The shipped ingredients, methods and glasses are there.</summary>
public sealed class SeedDataCheck(HouseStock house) : IHealthCheck
{
    /// <inheritdoc/>
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(house.Pantry.All.Count > 0 && house.Catalogue.Methods.Count > 0 && house.Catalogue.Glasses.Count > 0
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("Without ingredients, methods or glasses no drink can be read."));
}
