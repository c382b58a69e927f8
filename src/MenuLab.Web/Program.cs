using System.Globalization;
using MenuLab.Web;
using MenuLab.Web.Commands;

// The house's settings say how numbers look, never the machine's.
CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

return Verbs.AreGiven(args) ? await Verbs.RunAsync(args) : await WebHost.ServeAsync(args);
