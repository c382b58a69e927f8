using MenuLab.Web;

return await Site.ServeAsync(args);
