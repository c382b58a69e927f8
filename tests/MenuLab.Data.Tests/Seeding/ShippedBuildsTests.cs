using MenuLab.Core.House;
using MenuLab.Data.Seeding;

namespace MenuLab.Data.Tests.Seeding;

public class ShippedBuildsTests
{
    [Fact]
    public void Methods_ices_and_glasses_carry_the_keys_that_drafts_use()
    {
        var catalogue = Shipped.Data.Catalogue;
        foreach (var key in "shaken whip_shaken dry_shaken stirred thrown rolled swizzled built crushed blended flash_blended hot straight".Split(' '))
        {
            Assert.NotNull(catalogue.Method(key));
        }
        foreach (var key in "cubes wet_cubes crushed pebble block".Split(' '))
        {
            Assert.NotNull(catalogue.Ice(key));
        }
        Assert.Null(catalogue.Ice("none"));
        foreach (var key in ("coupe small_coupe rocks double_rocks highball long_glass flute wine_glass goblet mug heatproof_glass metal_cup punch_cup "
            + "shot_glass tumbler").Split(' '))
        {
            Assert.NotNull(catalogue.Glass(key));
        }
    }

    [Fact]
    public void Every_ice_that_a_method_or_glass_names_is_there_and_a_wash_line_lies_below_the_brim()
    {
        var catalogue = Shipped.Data.Catalogue;
        Assert.All(catalogue.Methods, m => Assert.True(m.Ice == "none" ? m.IceGramsPer100Millilitres == 0 : catalogue.Ice(m.Ice) is not null, m.Key));
        Assert.All(catalogue.Methods, m => Assert.True(m.Source.Length > 20, m.Key));
        Assert.All(catalogue.Glasses, g => Assert.True(g.Ice == "none" || catalogue.Ice(g.Ice) is not null, g.Key));
        Assert.All(catalogue.Glasses, g => Assert.InRange(g.WashLineMillilitres, 0.6 * g.BrimMillilitres, 0.95 * g.BrimMillilitres));
        Assert.All(catalogue.Methods, m => Assert.True(m.Ice == "none" || m.DilutionUncertainty >= 0.05, m.Key));
    }

    // Defaults of the heat balance, fitted to recalled dilution curves (ESTIMATE).
    [Theory]
    [InlineData("shaken", "cubes", 180, 49, 500, 0.3, false)]
    [InlineData("stirred", "cubes", 200, 10, 300, 6, true)]
    [InlineData("built", "cubes", 125, 60, 500, 1.75, false)]
    [InlineData("crushed", "crushed", 165, 60, 500, 0.5, false)]
    [InlineData("swizzled", "crushed", 165, 60, 500, 0.5, false)]
    [InlineData("blended", "cubes", 175, 100, 1500, 0, false)]
    public void Parameters_are_the_fitted_defaults(string key, string ice, double grams, double vessel, double heat, double approach, bool cap)
    {
        var method = Shipped.Data.Catalogue.Method(key)!;
        Assert.Equal((ice, grams, vessel, heat, approach, cap),
            (method.Ice, method.IceGramsPer100Millilitres, method.VesselJoulesPerKelvin, method.AmbientJoules, method.ApproachKelvin, method.CapAtStart));
    }

    [Theory]
    [InlineData("cubes", -1, 0.02)]
    [InlineData("crushed", -0.5, 0.08)]
    [InlineData("pebble", -0.5, 0.06)]
    [InlineData("block", -18, 0)]
    public void Ices_are_the_fitted_defaults(string key, double celsius, double wet)
    {
        var ice = Shipped.Data.Catalogue.Ice(key)!;
        Assert.Equal((celsius, wet), (ice.Celsius, ice.SurfaceWaterFraction));
    }

    [Fact]
    public void Methods_without_a_published_model_say_so_and_are_the_least_certain()
    {
        var guessed = Shipped.Data.Catalogue.Methods.Where(m => m.Source.Contains("no published model", StringComparison.Ordinal)).ToList();
        Assert.Equal(["thrown", "rolled", "flash_blended"], guessed.Select(m => m.Key));
        Assert.All(guessed, m => Assert.Equal(0.10, m.DilutionUncertainty));
    }

    [Fact]
    public void The_shipped_measures_are_set_number_one() => Assert.Equal(new MeasuresSet { Number = 1 }, Shipped.Data.Measures);

    [Theory]
    [InlineData("figures.csv", 5, "2.52", "2,52x", "figures.csv, line 5, column source: the cell is empty", true)]
    [InlineData("figures.csv", 4, "2.52", "two", "figures.csv, line 4, column value: \"two\" is not a number", false)]
    [InlineData("ingredients.csv", 3, ",CitrusJuice,", ",Juicy,", "ingredients.csv, line 3, column kind: \"Juicy\" is none of", false)]
    [InlineData("ice.csv", 2, "-1,", "cold,", "ice.csv, line 2, column celsius: \"cold\" is not a number", false)]
    [InlineData("allergens.csv", 2, "unknown", "maybe", "allergens.csv, line 2, column state: \"maybe\" is neither present nor unknown", false)]
    [InlineData("pieces.csv", 2, "lemon_juice", "lemon_jus", "pieces.csv, column key: no ingredient is called lemon_jus", false)]
    public void A_fault_is_told_by_file_line_and_column(string file, int line, string was, string becomes, string message, bool emptySource)
    {
        var folder = Directory.CreateTempSubdirectory("seed-data-");
        try
        {
            foreach (var source in Directory.EnumerateFiles(SeedData.DefaultFolder, "*.csv"))
            {
                File.Copy(source, Path.Combine(folder.FullName, Path.GetFileName(source)));
            }
            var path = Path.Combine(folder.FullName, file);
            var lines = File.ReadAllLines(path);
            Assert.True(emptySource || lines[line - 1].Contains(was, StringComparison.Ordinal));
            lines[line - 1] = emptySource ? "lemon_juice,sucrose_g,0.43,,,,CONFIRMED" : lines[line - 1].Replace(was, becomes, StringComparison.Ordinal);
            File.WriteAllLines(path, lines);
            var fault = Assert.Throws<SeedDataException>(() => SeedData.Load(folder.FullName));
            Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_missing_file_is_named()
    {
        var folder = Directory.CreateTempSubdirectory("seed-data-");
        try
        {
            Assert.StartsWith("figures.csv cannot be read", Assert.Throws<SeedDataException>(() => SeedData.Load(folder.FullName)).Message, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete();
        }
    }
}
