using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>What a claim binds to, in words.</summary>
public static class ClaimWords
{
    /// <summary>"Binds to below 0.5 % ABV. …" with the rule; a hint where the claim names no limit.</summary>
    public static string Of(string claim, HouseFormat format)
    {
        if (Claims.LimitOf(claim) is not { } limit)
        {
            return "What the menu will say of it. A claim about alcohol binds the drink to a limit.";
        }
        var figure = $"{(limit.IsBelow ? "below" : "at most")} {format.Amount(limit.PercentVol)} % ABV";
        return $"Binds to {figure}{(limit.NoneInAnyLine ? ", and to no line that carries alcohol" : "")}. {char.ToUpperInvariant(limit.Source[0])}{limit.Source[1..]}{(limit.Source.EndsWith('.') ? "" : ".")}";
    }
}
