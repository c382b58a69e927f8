namespace MenuLab.Core.Drafts;

/// <summary>The methods, ices and glasses that the house knows, by key.</summary>
public sealed class BuildCatalogue
{
    private readonly Dictionary<string, MethodModel> _methods;
    private readonly Dictionary<string, IceForm> _ices;
    private readonly Dictionary<string, Glass> _glasses;

    /// <summary>A catalogue.</summary>
    /// <exception cref="ArgumentException">Two of one sort share a key.</exception>
    public BuildCatalogue(IEnumerable<MethodModel> methods, IEnumerable<IceForm> ices, IEnumerable<Glass> glasses)
    {
        Methods = [.. methods];
        Ices = [.. ices];
        Glasses = [.. glasses];
        _methods = Methods.ToDictionary(m => m.Key, StringComparer.Ordinal);
        _ices = Ices.ToDictionary(i => i.Key, StringComparer.Ordinal);
        _glasses = Glasses.ToDictionary(g => g.Key, StringComparer.Ordinal);
    }

    /// <summary>All methods, in the order of the file.</summary>
    public IReadOnlyList<MethodModel> Methods { get; }

    /// <summary>All ices.</summary>
    public IReadOnlyList<IceForm> Ices { get; }

    /// <summary>All glasses.</summary>
    public IReadOnlyList<Glass> Glasses { get; }

    /// <summary>The method with this key, or null.</summary>
    public MethodModel? Method(string? key) => key is null ? null : _methods.GetValueOrDefault(key);

    /// <summary>The ice with this key, or null ("none" is no ice).</summary>
    public IceForm? Ice(string? key) => key is null ? null : _ices.GetValueOrDefault(key);

    /// <summary>The glass with this key, or null.</summary>
    public Glass? Glass(string? key) => key is null ? null : _glasses.GetValueOrDefault(key);
}
