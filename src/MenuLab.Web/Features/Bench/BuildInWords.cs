using MenuLab.Core.Balance;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Bench;

/// <summary>Method, ice, glass and yield in words; what was not said says so where the figures need it.</summary>
public static class BuildInWords
{
    /// <summary>The build of a drink.</summary>
    public static IReadOnlyList<BuildWord> Of(ReadDrink read, BuildModel build, HouseFormat format)
    {
        var words = new List<BuildWord>
        {
            new("Method", build.Method is null ? "not said" : build.Method.Name + (read.Build.Seconds is { } s ? $", {format.Amount(s)} s" : "")),
            new("Ice", build.MethodIce?.Name ?? "none"),
            new("Glass", build.Glass is null ? "not said" : $"{build.Glass.Name}, {format.Amount(build.Glass.WashLineMillilitres)} mL to the wash line"),
            new("Served on", build.ServedIce?.Name ?? "no ice"),
        };
        if (read.Build.Strain is { } strain)
        {
            words.Add(new("Strain", strain.Replace('_', ' ')));
        }
        if (read.Yield is { } yield)
        {
            words.Add(new("Makes", yield.Text));
        }
        return words;
    }
}
