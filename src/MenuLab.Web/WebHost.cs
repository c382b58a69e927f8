using MenuLab.Data.Opening;
using MenuLab.Web.Accounts;
using MenuLab.Web.Features.Bench;
using MenuLab.Web.Features.Capture;
using MenuLab.Web.Features.History;
using MenuLab.Web.Features.Drafts;
using MenuLab.Web.Features.House;
using MenuLab.Web.Features.Pantry;
using MenuLab.Web.Features.Rounds;
using MenuLab.Web.Features.Specs;
using MenuLab.Web.Health;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using MudBlazor.Services;

namespace MenuLab.Web;

/// <summary>The web host: what it is made of and how a request walks through it.</summary>
public static class WebHost
{
    /// <summary>Where it listens unless ASPNETCORE_URLS, --urls or a port setting says otherwise: this machine only.</summary>
    public const string DefaultAddress = "http://127.0.0.1:5080";

    private static readonly TimeSpan KeepAlive = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan GivenUpAfter = TimeSpan.FromSeconds(15);

    /// <summary>Builds the host, listens until it is stopped, and returns the exit code.</summary>
    public static async Task<int> ServeAsync(string[] args)
    {
        var folder = DataFolder.Of(new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build());
        await using var houses = new Houses(folder, TimeProvider.System);
        // Opening the database and building the host take their time on a processor each.
        var opening = Task.Run(() => houses.OpenAsync(Console.WriteLine));
        await using var site = Build(args, houses);
        try
        {
            await opening;
            await site.StartAsync();
        }
        catch (StoreException problem)
        {
            await Console.Error.WriteLineAsync($"Cannot start: {problem.Message}");
            return 1;
        }
        catch (IOException problem) when (problem.InnerException is AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"Cannot listen: {problem.Message} Set ASPNETCORE_URLS to another address, e.g. http://127.0.0.1:5090.");
            return 1;
        }
        var addresses = site.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        // The browser tests read this line to learn the port.
        Console.WriteLine($"MenuLab is at {string.Join(" and ", addresses)} (stop with Ctrl+C).");
        var house = houses.Current;
        Console.WriteLine(house.IsDemo ? $"It shows the invented demo bar, kept in {house.File}." : $"It keeps the house in {house.File}.");
        await site.WaitForShutdownAsync();
        return 0;
    }

    /// <summary>The host, wired and not yet started.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="houses">The houses that it serves, opened by the caller; null for those of the data folder, to be opened before it starts.</param>
    public static WebApplication Build(string[] args, Houses? houses = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ApplicationName = typeof(WebHost).Assembly.GetName().Name,   // also when a test builds it
            // The program finds its own files wherever it is started from.
            ContentRootPath = AppContext.BaseDirectory,
        });
        // A build output has its static files spread over packages; a published one has them in wwwroot and ignores this.
        builder.WebHost.UseStaticWebAssets();
        // No catch-all route for files edited while it runs: it would be a route without a policy.
        builder.Configuration["ReloadStaticAssetsAtRuntime"] = "false";
        if (NoAddressIsSet(builder.Configuration))
        {
            builder.WebHost.UseUrls(DefaultAddress);
        }

        builder.WebHost.ConfigureKestrel(kestrel => kestrel.AddServerHeader = false);

        AddLook(builder.Services);
        AddAccess(builder);
        AddHouse(builder, houses);
        builder.Services.AddHealthChecks().AddCheck<HouseCheck>("house", tags: [HealthRoutes.Ready]);

        var site = builder.Build();
        site.UseSecurityHeaders();
        site.UseExceptionHandler("/status/500", createScopeForErrors: true);
        site.UseStatusCodePagesWithReExecute("/status/{0}", createScopeForStatusCodePages: true);
        site.UseAuthentication();
        site.UseAuthorization();
        site.UseAntiforgery();

        site.MapStaticAssets().RequireAuthorization(May.Everyone);
        HealthRoutes.Map(site);
        DraftCards.Map(site);
        CaptureRoutes.Map(site);
        RoundRoutes.Map(site);
        site.MapRazorComponents<App>().AddInteractiveServerRenderMode().Add(RoutesOfTheFramework.AreForWhoeverMayReadDrinks);
        return site;
    }

    private static void AddLook(IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(hub =>
        {
            // A tablet that lost its network is noticed in 15 s instead of 30 (the browser's side is in connection.js).
            hub.KeepAliveInterval = KeepAlive;
            hub.ClientTimeoutInterval = GivenUpAfter;
        });
        services.AddMudServices();
        services.AddSecurityHeaderPolicies().SetDefaultPolicy(ResponseHeaders.Policy);
    }

    private static void AddHouse(WebApplicationBuilder builder, Houses? houses)
    {
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddSingleton(DataFolder.Of(builder.Configuration));
        if (houses is null)
        {
            builder.Services.AddSingleton<Houses>();
        }
        else
        {
            builder.Services.AddSingleton(houses);
        }
        builder.Services.AddScoped<CurrentHouse>();
        builder.Services.AddScoped<BenchDesk>();
        builder.Services.AddScoped<CaptureDesk>();
        builder.Services.AddScoped<RoundDesk>();
        builder.Services.AddScoped<BenchBrowser>();
        builder.Services.AddScoped<HistoryDesk>();
        builder.Services.AddScoped<CardDesk>();
        builder.Services.AddScoped<PantryDesk>();
        builder.Services.AddScoped<DraftDesk>();
        builder.Services.AddScoped<ImportDesk>();
        builder.Services.AddScoped<HouseDesk>();
        builder.Services.AddScoped(services => new DraftStarter(
            services.GetRequiredService<CurrentHouse>().House, services.GetRequiredService<CurrentPerson>().Id, services.GetRequiredService<TimeProvider>()));
    }

    private static void AddAccess(WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<CurrentPerson>();
        builder.Services.AddAuthentication(AtThisMachine.Scheme).AddScheme<AtThisMachineOptions, AtThisMachine>(AtThisMachine.Scheme, configureOptions: null);
        builder.Services.AddAuthorizationBuilder()
            .AddPolicy(May.Everyone, policy => policy.RequireAssertion(_ => true))
            .AddPolicy(May.ReadDrinks, policy => policy.RequireAuthenticatedUser())
            .AddPolicy(May.WorkDrinks, policy => policy.RequireAuthenticatedUser())
            // A route that names no policy is closed.
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(_ => false).Build());
        builder.Services.AddCascadingAuthenticationState();

        // Beside the database: a page that was open before a restart can then go on.
        builder.Services.AddDataProtection().SetApplicationName("MenuLab").PersistKeysToFileSystem(new DirectoryInfo(DataFolder.Of(builder.Configuration).KeysFolder));
    }

    private static bool NoAddressIsSet(ConfigurationManager settings) =>
        string.IsNullOrEmpty(settings["urls"]) && string.IsNullOrEmpty(settings["http_ports"]) && string.IsNullOrEmpty(settings["https_ports"])
        && !settings.GetSection("Kestrel:Endpoints").Exists();
}
