using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace MenuLab.Web.Tests;

public sealed class WebHostTests : IAsyncDisposable
{
    private readonly WebApplication _site = WebHost.Build([]);

    [Fact]
    public void Every_route_is_listed_here_with_its_mode_and_policy()
    {
        string[] expected =
        [
            "/ | interactive | WorkDrinks",
            "/_blazor | framework | ReadDrinks",
            "/_blazor/disconnect | framework | ReadDrinks",
            "/_blazor/initializers | framework | ReadDrinks",
            "/_blazor/negotiate | framework | ReadDrinks",
            "/_framework/opaque-redirect | framework | ReadDrinks",
            "/capture | static | WorkDrinks",
            "/capture/attachments/{id:guid} | endpoint | WorkDrinks",
            "/capture/entries | endpoint | WorkDrinks",
            "/card/draft | endpoint | ReadDrinks",
            "/card/drafts/{id:guid} | endpoint | WorkDrinks",
            "/card/iteration/{id:guid} | endpoint | WorkDrinks",
            "/card/sheet | endpoint | WorkDrinks",
            "/drafts/import | interactive | WorkDrinks",
            "/drafts/new | interactive | WorkDrinks",
            "/drafts/{Id:guid} | interactive | WorkDrinks",
            "/drafts/{Id:guid}/brief | interactive | WorkDrinks",
            "/drafts/{Id:guid}/compare | interactive | WorkDrinks",
            "/drafts/{Id:guid}/iterations/{Number:int} | interactive | WorkDrinks",
            "/health/live | endpoint | Everyone",
            "/health/ready | endpoint | Everyone",
            "/house | interactive | WorkDrinks",
            "/pantry | interactive | WorkDrinks",
            "/pantry/new | interactive | WorkDrinks",
            "/pantry/{Id:guid} | interactive | WorkDrinks",
            "/rounds/{Id:guid} | static | WorkDrinks",
            "/rounds/{id:guid}/bench | endpoint | WorkDrinks",
            "/rounds/{id:guid}/bottled | endpoint | WorkDrinks",
            "/rounds/{id:guid}/end | endpoint | WorkDrinks",
            "/rounds/{id:guid}/iteration | endpoint | WorkDrinks",
            "/rounds/{id:guid}/next | endpoint | WorkDrinks",
            "/rounds/{id:guid}/poured | endpoint | WorkDrinks",
            "/rounds/{id:guid}/pours | endpoint | WorkDrinks",
            "/status/{Code:int} | static | Everyone",
            "/type | interactive | ReadDrinks",
        ];

        var seen = Routes().Where(r => !IsFile(r)).Select(r => $"{Path(r)} | {Mode(r)} | {Policies(r)}").Distinct().Order(StringComparer.Ordinal);

        Assert.Equal(expected, seen);
    }

    [Fact]
    public void Style_sheets_and_scripts_are_for_everyone()
    {
        var files = Routes().Where(IsFile).ToList();
        Assert.NotEmpty(files);
        Assert.All(files, file => Assert.Equal("Everyone", Policies(file)));
    }

    [Fact]
    public async Task A_route_that_names_no_policy_is_closed()
    {
        var fallback = await _site.Services.GetRequiredService<IAuthorizationPolicyProvider>().GetFallbackPolicyAsync();
        var somebody = new System.Security.Claims.ClaimsPrincipal(new System.Security.Claims.ClaimsIdentity("test"));

        var answer = await _site.Services.GetRequiredService<IAuthorizationService>().AuthorizeAsync(somebody, null, fallback!);

        Assert.False(answer.Succeeded);
    }

    [Fact]
    public void Faults_are_not_shown_to_visitors() =>
        Assert.False(_site.Services.GetRequiredService<Microsoft.Extensions.Options.IOptions<Microsoft.AspNetCore.Components.Server.CircuitOptions>>().Value.DetailedErrors);

    private List<RouteEndpoint> Routes() =>
        [.. ((IEndpointRouteBuilder)_site).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()];

    private static string Path(RouteEndpoint route) => "/" + route.RoutePattern.RawText!.Trim('/');

    private static bool IsFile(RouteEndpoint route) => route.Metadata.Any(m => m.GetType().Name.Contains("StaticAsset", StringComparison.Ordinal));

    private static string Mode(RouteEndpoint route) =>
        route.Metadata.GetMetadata<ComponentTypeMetadata>() is { } page
            ? page.Type.IsDefined(typeof(ExcludeFromInteractiveRoutingAttribute), inherit: true) ? "static" : "interactive"
            : Path(route).StartsWith("/_", StringComparison.Ordinal) ? "framework" : "endpoint";

    private static string Policies(RouteEndpoint route) => string.Join('+', route.Metadata.OfType<IAuthorizeData>().Select(a => a.Policy));

    public ValueTask DisposeAsync() => _site.DisposeAsync();
}
