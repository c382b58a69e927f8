using MenuLab.Web;
using MenuLab.Web.Commands;

return Verbs.AreGiven(args) ? await Verbs.RunAsync(args) : await Site.ServeAsync(args);
