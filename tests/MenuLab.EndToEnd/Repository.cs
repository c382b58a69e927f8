namespace MenuLab.EndToEnd;

/// <summary>Where the sources are, and where this run leaves what it made.</summary>
internal static class Repository
{
    /// <summary>The folder with MenuLab.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>What a run leaves behind: the published site, pictures. Not under version control.</summary>
    public static string Artifacts => Path.Combine(Root, "artifacts", "end-to-end");

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "MenuLab.sln")))
            {
                return folder.FullName;
            }
        }
        throw new DirectoryNotFoundException("These tests run from within the repository: no MenuLab.sln above " + AppContext.BaseDirectory);
    }
}
