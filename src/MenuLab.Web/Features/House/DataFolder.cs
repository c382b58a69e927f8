namespace MenuLab.Web.Features.House;

/// <summary>Where a house keeps its files: MENULAB_DATA or --data names the folder, else it is MenuLab in the user's own data folder.</summary>
/// <param name="Path">The folder.</param>
public sealed record DataFolder(string Path)
{
    private const string Demo = "demo";
    private const string Own = "house";

    /// <summary>The bar's own database.</summary>
    public string OwnFile => System.IO.Path.Combine(Path, "house.db");

    /// <summary>The demo bar's database.</summary>
    public string DemoFile => System.IO.Path.Combine(Path, "demo.db");

    /// <summary>Keys that protect what the host hands to browsers.</summary>
    public string KeysFolder => System.IO.Path.Combine(Path, "keys");

    /// <summary>The demo bar was shown last, or nothing yet and the bar has no house of its own.</summary>
    public bool ShowsDemo => File.Exists(ShownFile) ? File.ReadAllText(ShownFile).Trim() == Demo : !File.Exists(OwnFile);

    private string ShownFile => System.IO.Path.Combine(Path, "shown.txt");

    /// <summary>The folder that the settings name, or the usual one.</summary>
    public static DataFolder Of(IConfiguration settings) => new(System.IO.Path.GetFullPath(
        settings["data"] is { Length: > 0 } asked ? asked
        : settings["MENULAB_DATA"] is { Length: > 0 } named ? named
        : System.IO.Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "MenuLab")));

    /// <summary>Remembers which house is shown.</summary>
    public void Remember(bool demo)
    {
        var text = demo ? Demo : Own;
        if (!File.Exists(ShownFile) || File.ReadAllText(ShownFile).Trim() != text)
        {
            File.WriteAllText(ShownFile, text);
        }
    }
}
