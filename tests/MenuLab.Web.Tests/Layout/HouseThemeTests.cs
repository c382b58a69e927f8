using System.Text.RegularExpressions;
using MenuLab.Web.Layout;
using MudBlazor;
using MudBlazor.Utilities;

namespace MenuLab.Web.Tests.Layout;

public partial class HouseThemeTests
{
    // Which colour of the component library is which token (look: the mapping); the light and the dark palette share it.
    private static readonly Dictionary<string, Func<Palette, MudColor>[]> Uses = new()
    {
        ["paper"] = [p => p.Background, p => p.TableStriped],
        ["sheet"] = [p => p.Surface, p => p.AppbarBackground, p => p.DrawerBackground],
        ["well"] = [p => p.BackgroundGray, p => p.ActionDisabledBackground, p => p.TableHover, p => p.Skeleton],
        ["ink"] = [p => p.TextPrimary, p => p.AppbarText, p => p.DrawerText],
        ["ink-2"] = [p => p.TextSecondary, p => p.TextDisabled, p => p.DrawerIcon, p => p.ActionDefault, p => p.ActionDisabled, p => p.Secondary],
        ["line"] = [p => p.LinesDefault, p => p.TableLines, p => p.Divider, p => p.DividerLight],
        ["edge"] = [p => p.LinesInputs],
        ["kelp"] = [p => p.Primary, p => p.Success],
        ["on-kelp"] = [p => p.PrimaryContrastText, p => p.SuccessContrastText],
        ["plum"] = [p => p.Tertiary],
        ["fruit"] = [p => p.Warning],
        ["sky"] = [p => p.Info],
        ["alarm"] = [p => p.Error],
    };

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public void The_theme_has_the_colours_of_the_tokens(string mode)
    {
        Palette palette = mode == "light" ? HouseTheme.Theme.PaletteLight : HouseTheme.Theme.PaletteDark;
        var tokens = Tokens(mode);

        foreach (var (token, uses) in Uses)
        {
            Assert.All(uses, use => Assert.Equal(tokens[token], use(palette).ToString(MudColorOutputFormats.Hex).ToUpperInvariant()));
        }
    }

    [Fact]
    public void Both_modes_have_the_same_tokens() =>
        Assert.Equal(Tokens("light").Keys.Order(StringComparer.Ordinal), Tokens("dark").Keys.Order(StringComparer.Ordinal));

    private static Dictionary<string, string> Tokens(string mode)
    {
        var css = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "tokens.css"));
        var block = css[css.IndexOf($"[data-mode={mode}] {{", StringComparison.Ordinal)..];
        return Colour().Matches(block[..block.IndexOf('}', StringComparison.Ordinal)])
            .ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value.ToUpperInvariant());
    }

    [GeneratedRegex(@"--([a-z0-9-]+): (#[0-9A-Fa-f]{6});")]
    private static partial Regex Colour();
}
