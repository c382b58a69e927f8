using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Extensions.Options;

namespace MenuLab.Web.Accounts;

/// <summary>No settings.</summary>
public sealed class AtThisMachineOptions : AuthenticationSchemeOptions;

/// <summary>Signs in whoever reaches the host as <see cref="CurrentPerson"/>; the host listens on this machine only.</summary>
public sealed class AtThisMachine(
    IOptionsMonitor<AtThisMachineOptions> options, ILoggerFactory logger, UrlEncoder encoder, CurrentPerson person)
    : AuthenticationHandler<AtThisMachineOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public new const string Scheme = "AtThisMachine";

    /// <inheritdoc/>
    protected override Task<AuthenticateResult> HandleAuthenticateAsync() =>
        Task.FromResult(AuthenticateResult.Success(new AuthenticationTicket(person.AsPrincipal(Scheme), Scheme)));

    /// <inheritdoc/>
    protected override Task HandleForbiddenAsync(AuthenticationProperties properties)
    {
        // The closed fallback policy also answers for addresses that do not exist at all: what names no policy is "not found".
        Response.StatusCode = Context.GetEndpoint()?.Metadata.GetMetadata<IAuthorizeData>() is null ? StatusCodes.Status404NotFound : StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }
}
