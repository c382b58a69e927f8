using CsCheck;
using MenuLab.Core.Statistics;
using static MenuLab.Core.Tests.Statistics.StatisticsOracle;

namespace MenuLab.Core.Tests.Statistics;

/// <summary>The functions taken from the numerics library, held against R and against each other.</summary>
public sealed class DistributionsTests
{
    [Fact] // R: pf, pt, pchisq through its analyses
    public void Tails_are_those_of_R()
    {
        Near(Anova("wine_replicated", "p_inter"), Distributions.FUpper(Anova("wine_replicated", "F_inter"), 24, 36), 1e-10);
        Near(Anova("wine_cellmeans", "p_sample"), Distributions.FUpper(Anova("wine_cellmeans", "F_sample"), 3, 24), 1e-9);
        Near(Anova("macon_friedman", "p"), Distributions.ChiSquaredUpper(24.12, 7), 1e-10);
        Near(Panel("ca_bordeaux", "p"), Distributions.ChiSquaredUpper(731.845008773, 12), 1e-8);
        Near(Link("ideal_ols", "p_b2"), Distributions.StudentTwoSided(Link("ideal_ols", "t_b2"), 30), 1e-10);
        Near(Panel("jar_sweet_high", "welch_p_two"), Distributions.StudentTwoSided(Panel("jar_sweet_high", "welch_t"), Panel("jar_sweet_high", "welch_df")), 1e-10);
        Near(Anova("HW_cotton_page", "p_one_sided_normal"), Distributions.NormalUpper(Anova("HW_cotton_page", "z_one_sided")), 1e-10);
    }

    [Fact] // printed in every table: t(.975) for 8 degrees 2.306, z(.975) 1.959964 (MEMORY)
    public void Quantiles_are_those_that_books_print()
    {
        Assert.Equal(2.306004, Distributions.StudentQuantile(0.975, 8), 1e-6);
        Assert.Equal(12.706205, Distributions.StudentQuantile(0.975, 1), 1e-6);
        Assert.Equal(1.959963984540, Distributions.NormalQuantile(0.975), 1e-12);
        Assert.Equal(1.959963984540, Distributions.StudentQuantile(0.975, double.PositiveInfinity), 1e-12);
        Assert.Equal(0, Distributions.StudentQuantile(0.5, 3));
    }

    [Fact]
    public void A_quantile_gives_back_its_share() =>
        Gen.Select(Gen.Double[0.5, 0.9999], Gen.Double[1, 80]).Sample((share, degrees) =>
            Math.Abs(Distributions.StudentUpper(Distributions.StudentQuantile(share, degrees), degrees) - (1 - share)) < 1e-12);

    [Fact]
    public void Both_binomial_tails_and_the_point_between_make_one() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[0.01, 0.99], Gen.Double[0, 1]).Sample((n, p, place) =>
        {
            var x = (int)(place * n);
            var sum = Distributions.BinomialLower(x - 1, n, p) + Distributions.BinomialPoint(x, n, p) + Distributions.BinomialUpper(x + 1, n, p);
            return Math.Abs(sum - 1) < 1e-11;
        });
}
