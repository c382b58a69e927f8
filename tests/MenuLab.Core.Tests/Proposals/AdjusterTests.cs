using System.Globalization;
using CsCheck;
using MenuLab.Core.Pantry;
using MenuLab.Core.Preps;
using MenuLab.Core.Proposals;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;
using MenuLab.TestKit.Preps;

namespace MenuLab.Core.Tests.Proposals;

public class AdjusterTests
{
    private static readonly Additive Water = new(Larder.Water, Made.Water);
    private static readonly Additive Sugar = new(Larder.Sugar, Made.Of((Component.Sucrose, 1)));
    private static readonly Additive Citric = new(Larder.Citric, Made.Of((Component.Citric, 1 / 192.124)));
    private static readonly Additive Malic = new(Larder.Id(70), Made.Of((Component.Malic, 1 / 134.087)));
    private static readonly Additive Salt = new(Larder.Id(71), Made.Of((Component.Salt, 1)));
    private static readonly Additive Fructose = new(Larder.Id(72), Made.Of((Component.Fructose, 1)));
    private static readonly Portion Syrup = new(Larder.Id(80), Made.Syrup, 1000);
    private static readonly Portion Vinegar = new(Larder.Id(81), Made.WithDensity(1.007, (Component.Acetic, 0.05 / 1.007 / 60.052)), 1007);

    private static double After(Adjustment adjustment, PrepFigure figure) => adjustment.Figure(figure).After.Value;

    // Pure syrup by hand: 1000 g of 50 Bx to 65 takes 1000 x 15/35 = 428.57 g of sugar; to 40 takes 250 g of water.
    [Theory]
    [InlineData(65, 428.5714, "dissolve")]
    [InlineData(40, 250, "dilute")]
    public void A_syrup_takes_sugar_or_water_to_its_brix(double target, double grams, string word)
    {
        var adjusted = SyrupBrix.Reach(Syrup, target, Sugar, Water).Value;
        Assert.Equal(grams, adjusted.Parts[1].Grams, 1e-3);
        Assert.Equal(word, adjusted.Word);
        Assert.Equal(target, After(adjusted, PrepFigure.Brix), 1e-6);
    }

    [Theory]
    [InlineData(120)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_brix_that_cannot_be_is_refused_at_its_field(double target) =>
        Assert.Equal(SyrupBrix.Target, Assert.Single(SyrupBrix.Reach(Syrup, target, Sugar, Water).Problems).Field);

    [Fact]
    public void A_liqueur_is_not_adjusted_by_brix() =>
        Assert.Contains("alcohol", SyrupBrix.Reach(new Portion(Larder.Spirit, Made.Spirit, 100), 30, Sugar, Water).Problems[0].Message, StringComparison.Ordinal);

    public static IEnumerable<TheoryDataRow<string, double, double>> Juices() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Proposals", "juice-acids.csv")).Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split(','))
            .Select(c => new TheoryDataRow<string, double, double>(c[0], double.Parse(c[1], CultureInfo.InvariantCulture), double.Parse(c[2], CultureInfo.InvariantCulture)));

    // To 60 g/L as citric, with citric and malic 2 : 1 (common practice, no source). By hand: each litre needs 60 less what is there, in equivalents,
    // over the powders' equivalents; the powder's own volume of 0.6 mL/g is what the charge balance adds.
    [Theory]
    [MemberData(nameof(Juices))]
    public void A_juice_reaches_the_acidity_of_lime_by_the_charge_balance(string name, double citric, double malic)
    {
        var juice = new Portion(
            Larder.Id(82), Made.WithDensity(1.04, (Component.Citric, citric / 1040 / 192.124), (Component.Malic, malic / 1040 / 134.087), (Component.Sucrose, 0.08)), 1040);
        // A titration to pH 8.1 counts 2.9806 of citric acid's three protons and 1.9990 of malic acid's two (third pKa 6.396, second 5.11).
        var before = citric * 2.9806 / 192.124 + malic * 1.9990 / 134.087;
        Assert.Equal(before * 6.4041, PrepFigures.Of(juice.Composition, PrepFigure.Acid).Value, 0.002);

        var adjusted = JuiceAcidity.Reach(juice, 6.0, [(Citric, 2), (Malic, 1)]).Value;
        var powder = adjusted.Parts[1].Grams + adjusted.Parts[2].Grams;
        Assert.Equal(2, adjusted.Parts[1].Grams / adjusted.Parts[2].Grams, 1e-9);
        var perGram = (2 * 2.9806 / 192.124 + 1.9990 / 134.087) / 3;
        var byHand = (60 / 64.041 - before) / (perGram - 0.0006 * 60 / 64.041);
        Assert.True(Math.Abs(powder / byHand - 1) < 0.01, $"{name}: {powder} g, by hand {byHand} g");
        Assert.Equal(6.0, After(adjusted, PrepFigure.Acid), 1e-6);
        var (ph, phAfter) = adjusted.Figure(PrepFigure.Ph);
        Assert.True(phAfter.Value < ph.Value);
    }

    [Fact]
    public void An_acidity_below_what_is_there_is_refused_and_so_is_a_mix_of_nothing()
    {
        var lemon = new Portion(Larder.Lemon, Larder.Of(Larder.Lemon), 500);
        Assert.Equal(JuiceAcidity.Target, JuiceAcidity.Reach(lemon, 1, [(Citric, 1)]).Problems[0].Field);
        Assert.Equal("Powders", JuiceAcidity.Reach(lemon, 7, []).Problems[0].Field);
        Assert.Equal("Powders", JuiceAcidity.Reach(lemon, 7, [(Citric, -1)]).Problems[0].Field);
    }

    [Fact]
    public void Every_usual_acid_mix_says_that_it_is_common_practice() =>
        Assert.All(AcidMix.Usual, m => Assert.Equal("common practice, no source", m.Source));

    // 5 % (w/v) to 4 %: 1 L of it makes 1.25 L.
    [Fact]
    public void A_vinegar_is_diluted_to_its_strength()
    {
        var diluted = VinegarStrength.Reach(Vinegar, 4, Water).Value;
        Assert.Equal(4, After(diluted, PrepFigure.Acetic), 1e-6);
        Assert.Equal(1250, diluted.Millilitres, 3);
        Assert.Equal(VinegarStrength.Target, VinegarStrength.Reach(Vinegar, 6, Water).Problems[0].Field);
        Assert.Equal(VinegarStrength.Target, VinegarStrength.Reach(Vinegar, 0, Water).Problems[0].Field);
    }

    // Fructose sweetens 1.2 times as much as sucrose: 100 g are replaced by 83.3 g.
    [Fact]
    public void A_sugar_is_swapped_at_equal_sweetness()
    {
        var rest = new Portion(Larder.Water, Made.Water, 900);
        var swapped = SugarSwap.Equal(rest, Sugar.Of(100), Fructose, SwapBy.Sweetness).Value;
        Assert.Equal(100 / 1.2, swapped.Parts[1].Grams, 1e-6);
        Assert.Contains("83 %", Assert.Single(swapped.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sugar_is_swapped_at_equal_body_for_about_its_own_mass()
    {
        var rest = new Portion(Larder.Water, Made.Water, 900);
        var swapped = SugarSwap.Equal(rest, Sugar.Of(100), Fructose, SwapBy.Body).Value;
        Assert.InRange(swapped.Parts[1].Grams, 95, 105);
        Assert.Contains("sweetness is 1", Assert.Single(swapped.Notes), StringComparison.Ordinal);
        Assert.Equal(SugarSwap.To, SugarSwap.Equal(rest, Sugar.Of(100), Salt, SwapBy.Sweetness).Problems[0].Field);
    }

    [Fact]
    public void Saline_is_made_by_mass_up_to_saturation()
    {
        var saline = Saline.Make(20, 500, Salt, Water).Value;
        Assert.Equal((400.0, 100.0), (saline.Parts[0].Grams, saline.Parts[1].Grams));
        Assert.Equal(0.2, saline.Outcome.PerGram[(int)Component.Salt], 1e-12);
        // 20 % by mass: 1.148 g/mL (CRC-type table); salt at a constant 0.33 mL/g gives 1.152.
        Assert.Equal(1.148, saline.Outcome.GramsPerMillilitre, 0.006);
        Assert.Equal(Saline.Strength, Saline.Make(30, 100, Salt, Water).Problems[0].Field);
        Assert.Equal("Grams", Saline.Make(10, -1, Salt, Water).Problems[0].Field);
    }

    [Fact]
    public void Two_batches_blend_to_a_target_between_them()
    {
        var thick = new Additive(Larder.Id(83), Made.Of((Component.Sucrose, 0.6)));
        var thin = new Additive(Larder.Id(84), Made.Of((Component.Sucrose, 0.4)));
        var blend = BatchBlend.Reach(thin, thick, 1000, PrepFigure.Brix, 45).Value;
        Assert.Equal(750, blend.Parts[0].Grams, 1e-6);
        Assert.Equal(45, After(blend, PrepFigure.Brix), 1e-9);
        Assert.Equal(BatchBlend.Target, BatchBlend.Reach(thin, thick, 1000, PrepFigure.Brix, 65).Problems[0].Field);
    }

    [Fact]
    public void A_batch_reduced_too_far_is_diluted_back_to_the_good_one()
    {
        // 1000 g of 1:1 syrup; the bad batch lost 230.77 g and stands at 65 Bx.
        var bad = new Portion(Larder.Id(85), Made.Of((Component.Sucrose, 0.65)), 1000);
        var rescue = BatchRescue.Match(bad, Made.Syrup, PrepFigure.Brix, Water, "water").Value;
        // By hand: 300 g of water to 1000 g (65/50 - 1), 300.5 mL to 760 mL.
        Assert.Equal(300, rescue.Adjustment.Parts[1].Grams, 1e-3);
        Assert.Equal(300 / 0.9982 / bad.Millilitres, rescue.PartsByVolume, 1e-4);
        Assert.Equal("Dilute 1 : 0.4 (by volume) with water to match the good one.", rescue.Sentence);
        var density = rescue.Beside.Single(f => f.Figure == PrepFigure.Density);
        Assert.Equal(density.Good.Value, density.Rescued.Value, 1e-6);
    }

    [Fact]
    public void An_over_steeped_tea_is_diluted_by_its_tannin_and_loses_caffeine()
    {
        PrepOutcome Tea(double minutes) => Larder.Work(Larder.Recipe(
            [Larder.Line(Larder.TeaLeaf, 20), Larder.Line(Larder.Water, 1000)], new Combine([0, 1]), new Steep(minutes, 95), new Strain())).Value;
        var (good, bad) = (Tea(2), Tea(12));
        var rescue = BatchRescue.Match(new Portion(Larder.Id(86), bad.Composition, 950), good.Composition, PrepFigure.Tannin, Water, "water").Value;
        // Polyphenols of coarse leaf from 2 to 12 min at 95 °C: 0.743 to 1.000 (COMPUTED), so about 0.35 parts of water.
        Assert.Equal(0.35, rescue.PartsByVolume, 0.01);
        var caffeine = rescue.Beside.Single(f => f.Figure == PrepFigure.Caffeine);
        Assert.True(caffeine.Rescued.Value < caffeine.Good.Value);
    }

    [Fact]
    public void A_batch_that_is_too_thin_is_not_rescued_with_water()
    {
        var thin = new Portion(Larder.Id(87), Made.Of((Component.Sucrose, 0.3)), 1000);
        var problem = Assert.Single(BatchRescue.Match(thin, Made.Syrup, PrepFigure.Brix, Water, "water").Problems);
        Assert.Contains("stands at 30, the good one at 50", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nobody_knows_is_refused_and_not_taken_for_nothing()
    {
        // A bottle of which only the strength stands on the label.
        var bottle = new Additive(Larder.Id(89), Larder.Build(IngredientKind.Alcohol, ("ethanol_g", 0.2)));
        Assert.Contains("Nobody knows", SyrupBrix.Reach(bottle.Of(500), 40, Sugar, Water).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("Nobody knows", SyrupBrix.Reach(Syrup, 40, Sugar, bottle).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("Nobody knows", BatchBlend.Reach(bottle, Sugar, 500, PrepFigure.Sugar, 5).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("Nobody knows", BatchRescue.Match(Syrup, Made.Syrup, PrepFigure.Sugar, bottle, "it").Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("Nobody knows", JuiceAcidity.Reach(new Portion(Larder.Lemon, Larder.Of(Larder.Lemon), 500), 7, [(bottle, 1)]).Problems[0].Message, StringComparison.Ordinal);
        foreach (var by in Enum.GetValues<SwapBy>())
        {
            Assert.Contains("Nobody knows", SugarSwap.Equal(new Portion(Larder.Water, Made.Water, 900), bottle.Of(100), Fructose, by).Problems[0].Message, StringComparison.Ordinal);
        }
        var unread = new Portion(Larder.Id(90), Made.Of(Made.AllBut(Component.Acetic.Bit()), []), 1000);
        Assert.Contains("Nobody knows", VinegarStrength.Reach(unread, 4, Water).Problems[0].Message, StringComparison.Ordinal);
        Assert.True(VinegarStrength.Reach(new Portion(Larder.Vinegar, Larder.Of(Larder.Vinegar), 1000), 4, new Additive(Larder.Water, Larder.Of(Larder.Water))).IsOk);
        Assert.True(SyrupBrix.Reach(Syrup, 40, new Additive(Larder.Sugar, Larder.Of(Larder.Sugar)), new Additive(Larder.Water, Larder.Of(Larder.Water))).IsOk);
    }

    [Fact]
    public void What_an_adjuster_proposes_is_written_back_as_a_recipe_with_the_same_result()
    {
        var adjusted = JuiceAcidity.Reach(new Portion(Larder.Lemon, Larder.Of(Larder.Lemon), 1000), 7, [(Citric, 2), (Malic, 1)]).Value;
        var recipe = adjusted.AsRecipe(Larder.Id(999), 1, "Sour pear juice").Value;
        Assert.Equal(["combine", "acidify"], recipe.Steps.Select(s => s.Word));
        var worked = PrepProcess.Work(recipe, id => id == Larder.Citric ? Citric.Composition : id == Malic.Ingredient ? Malic.Composition : Larder.Of(id)).Value;
        Assert.Equal(adjusted.Grams, worked.Grams.Value, 1e-9);
        Assert.Equal(7, PrepFigures.Of(worked.Composition, PrepFigure.Acid).Value, 1e-6);
    }

    [Fact]
    public void Any_target_between_thin_and_thick_is_reached() =>
        Gen.Select(Gen.Double[5, 75], Gen.Double[5, 75]).Sample((brix, target) =>
        {
            var syrup = new Portion(Larder.Id(88), Made.Of((Component.Sucrose, brix / 100)), 100);
            var adjusted = SyrupBrix.Reach(syrup, target, Sugar, Water);
            return adjusted.IsOk && Math.Abs(After(adjusted.Value, PrepFigure.Brix) - target) < 1e-6 && adjusted.Value.Parts.All(p => p.Grams >= 0);
        });
}
