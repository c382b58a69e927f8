using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Balance;

/// <summary>What the house holds, as far as a pour's figures need it.</summary>
/// <param name="Pantry">Where ingredients are found.</param>
/// <param name="Catalogue">Where methods, ices and glasses are found.</param>
/// <param name="Measures">The measures in use.</param>
/// <param name="PricePerGram">Net price per gram taken from stock, 0 where unpriced; null for no prices at all.</param>
public sealed record PourStock(PantryList Pantry, BuildCatalogue Catalogue, MeasuresSet Measures, Func<IngredientId, double>? PricePerGram = null)
{
    /// <summary>What an amount of an ingredient comes to.</summary>
    public LineContent Understand(LineContent content) => Understanding.Of(content, Pantry, Measures);
}

/// <summary>The figures of a pour, from what was poured where that differs from what was to be poured.</summary>
/// <param name="Letter">The pour.</param>
/// <param name="Tasted">The liquid in the glass at the size of the round: what the tasters taste.</param>
/// <param name="Whole">The same drink at full size: what a guest would get; the same as <paramref name="Tasted"/> in a round of whole drinks.</param>
/// <param name="Notes">What was left out of the figures and why, a sentence each.</param>
public sealed record PourFigures(PourLetter Letter, DrinkBalance Tasted, DrinkBalance Whole, IReadOnlyList<string> Notes)
{
    /// <summary>Sugar of what is tasted.</summary>
    public Estimate Sweet => Of(Tasted, Metric.Sugar);

    /// <summary>Acid of what is tasted.</summary>
    public Estimate Acid => Of(Tasted, Metric.Acid);

    /// <summary>Sugar to acid.</summary>
    public Estimate Ratio => Of(Tasted, Metric.SugarAcidRatio);

    /// <summary>Strength of what is tasted.</summary>
    public Estimate Strength => Of(Tasted, Metric.Abv);

    /// <summary>Volume of the whole drink as served.</summary>
    public Estimate Volume => Of(Whole, Metric.Volume);

    /// <summary>Fill of the glass by the whole drink, % of the wash line.</summary>
    public Estimate GlassFill => Of(Whole, Metric.GlassFill);

    /// <summary>Net cost of the whole drink.</summary>
    public Estimate Cost => Of(Whole, Metric.Cost);

    private static Estimate Of(DrinkBalance balance, Metric metric) => (balance.Served ?? balance.Mixed)[metric];
}

/// <summary>Computes the figures of pours.</summary>
/// <remarks>
/// A smaller pour is computed as what it is: less liquid and less ice, in a glass smaller in the same measure, but in the same
/// tin and the same hands, whose heat does not shrink with the drink. So it melts more ice per volume than the whole drink
/// would (heat balance, docs/science.md, section 7). Range and error: those of the engine.
/// </remarks>
public static class PourBalance
{
    /// <summary>The figures of one pour.</summary>
    /// <param name="round">The round.</param>
    /// <param name="letter">The pour.</param>
    /// <param name="stock">What the house holds.</param>
    /// <param name="detail">How much to work out.</param>
    /// <exception cref="ArgumentException">A line names an ingredient that the pantry lacks, or the build a key that the catalogue lacks.</exception>
    public static PourFigures Of(Round round, PourLetter letter, PourStock stock, Detail detail = Detail.Ranges)
    {
        var (tasted, notes) = Compute(GlassLines.Poured(round, letter, stock.Understand), round.Build, round.Share, stock, detail);
        var whole = round.Share == 1 ? tasted : Compute(GlassLines.Whole(round, letter, stock.Understand), round.Build, 1, stock, detail).Balance;
        return new PourFigures(letter, tasted, whole, notes);
    }

    /// <summary>The figures of all pours of a round, A first.</summary>
    public static IReadOnlyList<PourFigures> All(Round round, PourStock stock, Detail detail = Detail.Ranges) =>
        [.. round.Pours.Select(p => Of(round, p.Letter, stock, detail))];

    /// <summary>The warning that a small trial dilutes more, with both figures where the method has a model.</summary>
    /// <param name="round">The round.</param>
    /// <param name="figures">The figures of one of its pours.</param>
    /// <param name="format">How the house writes figures.</param>
    /// <returns>A sentence or two; empty for whole drinks and larger, and where the size makes no difference.</returns>
    public static string SmallTrial(Round round, PourFigures figures, HouseFormat format)
    {
        if (round.Share >= 1)
        {
            return "";
        }
        const string Why = "A small trial dilutes more: tin and hands give the same heat to less liquid.";
        var (small, whole) = (figures.Tasted.Served?[Metric.Dilution].Value ?? double.NaN, figures.Whole.Served?[Metric.Dilution].Value ?? double.NaN);
        // Without ice, or with so little heat that it cannot be printed, there is nothing to warn of.
        return Math.Abs(small - whole) < 0.5 ? ""
            : double.IsFinite(small) && double.IsFinite(whole)
            ? $"{Why} Here the ice adds about {format.Percent(small)} instead of {format.Percent(whole)} of a whole drink."
            : $"{Why} Taste the winner once more as a whole drink.";
    }

    private static (DrinkBalance Balance, IReadOnlyList<string> Notes) Compute(IReadOnlyList<LineContent> lines, Build build, double share, PourStock stock, Detail detail)
    {
        var weighed = Weigher.Of([.. lines.Select(l => l.ToDraftLine()).OfType<DraftLine>()], build, stock.Pantry, stock.Catalogue, stock.Measures, stock.PricePerGram);
        var uncounted = lines.Where(l => l.Ingredient is null && l.Place == Place.In).Sum(l => l.Understood.Millilitres ?? 0);
        return (BalanceEngine.Of(weighed.Lines, Smaller(weighed.Build, share), detail, uncounted), weighed.Notes);
    }

    private static BuildModel Smaller(BuildModel build, double share) => build.Glass is not { } glass ? build : build with
    {
        Glass = glass with { BrimMillilitres = glass.BrimMillilitres * share, WashLineMillilitres = glass.WashLineMillilitres * share },
    };
}
