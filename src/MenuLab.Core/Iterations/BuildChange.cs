using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;

namespace MenuLab.Core.Iterations;

/// <summary>What of a build changed.</summary>
public enum BuildPart
{
    /// <summary>The method.</summary>
    Method,
    /// <summary>Its seconds.</summary>
    Seconds,
    /// <summary>The ice that it is made with.</summary>
    Ice,
    /// <summary>The glass.</summary>
    Glass,
    /// <summary>The ice that it is served on.</summary>
    ServedOn,
    /// <summary>How it is strained.</summary>
    Strain,
    /// <summary>The steps as written.</summary>
    Steps,
    /// <summary>What the house reckons with for the same method, ice or glass: a wash line that was measured again.</summary>
    Reckoned,
}

/// <summary>A part of the build before and after.</summary>
/// <param name="Part">Which.</param>
/// <param name="Before">Its name, the bare figure of the seconds, or the steps; empty where nothing was said.</param>
/// <param name="After">The same after.</param>
public sealed record BuildChange(BuildPart Part, string Before, string After)
{
    private const string None = "no ice";

    internal static IEnumerable<BuildChange> Between(Snapshot before, Snapshot after)
    {
        var (b, a) = (before.Models, after.Models);
        var otherMethod = b.Method?.Key != a.Method?.Key;
        var otherGlass = b.Glass?.Key != a.Glass?.Key;
        if (otherMethod)
        {
            yield return new(BuildPart.Method, b.Method?.Name ?? "", a.Method?.Name ?? "");
        }
        // Seconds that were said of another method went or came with it.
        if (before.Build.Seconds != after.Build.Seconds && !(otherMethod && (before.Build.Seconds is null || after.Build.Seconds is null)))
        {
            yield return new(BuildPart.Seconds, Seconds(before), Seconds(after));
        }
        // Ice that nobody named comes and goes with the method or the glass it belongs to: one change, not two.
        if (b.MethodIce?.Key != a.MethodIce?.Key && !(otherMethod && before.Build.Ice is null && after.Build.Ice is null))
        {
            yield return new(BuildPart.Ice, b.MethodIce?.Name ?? None, a.MethodIce?.Name ?? None);
        }
        if (otherGlass)
        {
            yield return new(BuildPart.Glass, b.Glass?.Name ?? "", a.Glass?.Name ?? "");
        }
        if (b.ServedIce?.Key != a.ServedIce?.Key && !((otherMethod || otherGlass) && before.Build.ServedOn is null && after.Build.ServedOn is null))
        {
            yield return new(BuildPart.ServedOn, b.ServedIce?.Name ?? None, a.ServedIce?.Name ?? None);
        }
        if (before.Build.Strain != after.Build.Strain)
        {
            yield return new(BuildPart.Strain, Strain(before), Strain(after));
        }
        if (!before.Build.Steps.SequenceEqual(after.Build.Steps))
        {
            yield return new(BuildPart.Steps, string.Join(' ', before.Build.Steps), string.Join(' ', after.Build.Steps));
        }
        if (Reckoned(b, a))
        {
            yield return new(BuildPart.Reckoned, "", "");
        }
    }

    private static bool Reckoned(BuildModel before, BuildModel after) =>
        Differ(before.Method, after.Method) || Differ(before.MethodIce, after.MethodIce) || Differ(before.Glass, after.Glass) || Differ(before.ServedIce, after.ServedIce);

    // The same key with other figures; what it is called and where the figures come from is not reckoned with.
    private static bool Differ(MethodModel? before, MethodModel? after) =>
        before?.Key == after?.Key && before is not null && before with { Name = after!.Name, Source = after.Source } != after;

    private static bool Differ(IceForm? before, IceForm? after) =>
        before?.Key == after?.Key && before is not null && before with { Name = after!.Name, Source = after.Source } != after;

    private static bool Differ(Glass? before, Glass? after) =>
        before?.Key == after?.Key && before is not null && before with { Name = after!.Name, Source = after.Source } != after;

    private static string Seconds(Snapshot of) => of.Build.Seconds is { } s ? HouseFormat.Plain.Amount(s) : "";

    private static string Strain(Snapshot of) => of.Build.Strain?.Replace('_', '-') ?? "";
}
