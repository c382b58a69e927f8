using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Drafts;

/// <summary>A build in one phrase, as far as it was said: "shaken, 12 s, ice cubes, fine strained, glass coupe".</summary>
public static class BuildAsRead
{
    /// <summary>The phrase; empty where nothing was said.</summary>
    public static string Of(Build build, HouseFormat format) => string.Join(", ", new[]
    {
        Word(build.Method), build.Seconds is { } seconds ? $"{format.Amount(seconds)} s" : "", Word(build.Ice, "ice "), Word(build.Strain), Word(build.Glass, "glass "), Word(build.ServedOn, "served on "),
    }.Where(text => text.Length > 0));

    private static string Word(string? key, string before = "") => key is null ? "" : before + key.Replace('_', ' ');
}
