using System.CommandLine;

namespace MenuLab.Web.Commands;

/// <summary>The host's command line: no verb serves the site, a verb does one job and ends.</summary>
public static class Verbs
{
    /// <summary>The words name a verb (or ask for help); else the site is served.</summary>
    public static bool AreGiven(string[] args) => args.Length > 0 && (!args[0].StartsWith('-') || args[0] is "--help" or "-h" or "-?" or "--version");

    /// <summary>Runs the verb; 0 when it worked, 1 when the input could not be read or the words are off.</summary>
    public static Task<int> RunAsync(string[] args)
    {
        var root = new RootCommand("MenuLab. Without a verb it serves the site.") { BalanceVerb.Command(), ImportVerb.Command() };
        return root.Parse(args).InvokeAsync();
    }
}
