using MenuLab.Web.Features.House;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace MenuLab.Web.Health;

/// <summary>A house is open and has what it takes to read a drink.</summary>
public sealed class HouseCheck(Houses houses) : IHealthCheck
{
    /// <inheritdoc/>
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(houses.Current.Book.Stock is { Pantry.All.Count: > 0, Catalogue: { Methods.Count: > 0, Glasses.Count: > 0 } }
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("Without ingredients, methods or glasses no drink can be read."));
}
