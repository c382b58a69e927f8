using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Web.Features.Bench;

/// <summary>What a brief says about a figure, where it binds.</summary>
/// <param name="Metric">The figure; null for one about allergens.</param>
/// <param name="IsOff">The drink does not keep to it.</param>
/// <param name="IsOpen">It cannot be told yet.</param>
/// <param name="Sentence">In words.</param>
public sealed record BriefRemark(Metric? Metric, bool IsOff, bool IsOpen, string Sentence)
{
    /// <summary>What the brief says about a drink.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="balance">The drink's balance.</param>
    /// <param name="format">How figures are written.</param>
    /// <param name="currency">Currency of the costs, ISO 4217.</param>
    /// <param name="holding">Names of the lines with an allergen in a state.</param>
    public static IReadOnlyList<BriefRemark> Of(Brief brief, DrinkBalance balance, HouseFormat format, string currency, Func<Allergen, AllergenState, IReadOnlyList<string>> holding)
    {
        var figures = balance.Served ?? balance.Mixed;
        var remarks = new List<BriefRemark>();
        if (Claims.LimitOf(brief.Claim) is { } claim)
        {
            remarks.Add(Limit(Core.Balance.Metric.Abv, figures[Core.Balance.Metric.Abv], claim.PercentVol, claim.IsBelow,
                $"the claim, {(claim.IsBelow ? "below" : "at most")} {format.Amount(claim.PercentVol)} % vol"));
        }
        if (brief.CostLimit is { } other && other.Currency != currency)
        {
            remarks.Add(new BriefRemark(Core.Balance.Metric.Cost, false, true, $"the brief says {format.Money(other)}; costs are in {currency}, and nothing is converted"));
        }
        else if (brief.CostLimit is { } most)
        {
            remarks.Add(Limit(Core.Balance.Metric.Cost, figures[Core.Balance.Metric.Cost], (double)most.Amount, false, $"the brief, {format.Money(most)}"));
        }
        foreach (var allergen in Enum.GetValues<Allergen>().Where(a => brief.Avoid[a] == AllergenState.Present))
        {
            var state = balance.Allergens[allergen];
            if (state == AllergenState.Present)
            {
                remarks.Add(new BriefRemark(null, true, false, $"The brief avoids {AllergenWords.Of(allergen)}: it is in {string.Join(", ", holding(allergen, state))}."));
            }
            else if (state == AllergenState.Unknown)
            {
                remarks.Add(new BriefRemark(null, false, true, $"The brief avoids {AllergenWords.Of(allergen)}: unknown for {string.Join(", ", holding(allergen, state))}."));
            }
        }
        return remarks;
    }

    // A figure that is only "at least" can break a limit and can never be said to keep it.
    private static BriefRemark Limit(Metric metric, Estimate estimate, double limit, bool isBelow, string of) =>
        estimate.Certainty == Certainty.Unknown ? new BriefRemark(metric, false, true, $"not known yet against {of}")
        : (isBelow ? estimate.Value >= limit : estimate.Value > limit) ? new BriefRemark(metric, true, false, $"over {of}")
        : estimate.Certainty != Certainty.Plain ? new BriefRemark(metric, false, true, $"so far inside {of}")
        : (isBelow ? estimate.High >= limit : estimate.High > limit) ? new BriefRemark(metric, false, false, $"inside {of}; may be over")
        : new BriefRemark(metric, false, false, $"inside {of}");
}
