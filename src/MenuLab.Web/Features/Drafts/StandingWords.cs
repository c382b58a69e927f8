using MenuLab.Core.Drafts;

namespace MenuLab.Web.Features.Drafts;

/// <summary>Where a draft stands, in words.</summary>
public static class StandingWords
{
    /// <summary>"in the works", "parked", "dropped".</summary>
    public static string Of(Standing standing) => standing switch
    {
        Standing.Parked => "parked",
        Standing.Dropped => "dropped",
        _ => "in the works",
    };

    /// <summary>The same with a capital letter.</summary>
    public static string Heading(Standing standing) => standing switch
    {
        Standing.Parked => "Parked",
        Standing.Dropped => "Dropped",
        _ => "In the works",
    };

    /// <summary>The action that puts it there.</summary>
    public static string Action(Standing standing) => standing switch
    {
        Standing.Parked => "Park",
        Standing.Dropped => "Drop",
        _ => "Take up",
    };
}
