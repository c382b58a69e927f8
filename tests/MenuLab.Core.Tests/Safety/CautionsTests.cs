using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Safety;

public class CautionsTests
{
    [Fact]
    public void Plain_syrup_and_water_raise_nothing() => Assert.Empty(Of(Made.Line(Made.Syrup, 20), Made.Line(Made.Water, 80)));

    [Fact]
    public void Raw_egg_is_named_with_its_line()
    {
        var egg = new Composition(Made.Water.PerGram, ulong.MaxValue, [], default, CompositionCaveats.RawEgg);
        var caution = Assert.Single(Of(Made.Line(Made.Water, 60), Made.Line(egg, 25)));
        Assert.Equal("raw_egg", caution.Key);
        Assert.Equal([1], caution.Lines);
    }

    [Fact]
    public void Quinine_over_83_mg_per_kg_is_told_to_exceed_the_ceiling()
    {
        // 21 CFR 172.575: 83 ppm.
        var strong = Made.Of((Component.Quinine, 0.1));   // 100 mg/kg
        var weak = Made.Of((Component.Quinine, 0.06));
        Assert.Contains("exceed 83", Assert.Single(Of(Made.Line(strong, 100))).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("exceed", Assert.Single(Of(Made.Line(weak, 100))).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100.0, 1.0, "trace_alcohol")]     // 40 % vol, 1 in 101: 0.40 % vol
    [InlineData(100.0, 2.0, "low_alcohol_claim")] // 0.78 % vol
    [InlineData(100.0, 20.0, null)]               // 6.7 % vol: nobody takes it for a drink without
    public void A_little_spirit_loses_the_claim_at_half_a_per_cent(double water, double spirit, string? key)
    {
        var keys = Of(Made.Line(Made.Water, water), Made.Line(Made.Spirit, spirit)).Select(c => c.Key);
        Assert.Equal(key is null ? [] : [key], keys);
    }

    [Fact]
    public void An_ingredient_whose_alcohol_nobody_knows_puts_the_claim_in_doubt()
    {
        var mystery = Made.Of(Made.AllBut(Component.Ethanol.Bit()), []);
        Assert.Equal("low_alcohol_claim", Assert.Single(Of(Made.Line(mystery, 20), Made.Line(Made.Water, 80))).Key);
    }

    private static IReadOnlyList<Caution> Of(params WeighedLine[] lines) => Cautions.Of(lines, BalanceEngine.Of(lines, Made.NoBuild, Detail.Ranges));
}
