using MenuLab.Core.Balance;
using MenuLab.Core.House;
using MenuLab.Core.Quantities;

namespace MenuLab.Web.Features.Bench;

/// <summary>What is to be said about a figure's validity, in a few words.</summary>
public static class Remarks
{
    /// <summary>The remarks, or nothing.</summary>
    public static string Of(Figure figure, HouseFormat format)
    {
        var words = new List<string>();
        if (figure.Estimate.Certainty is Certainty.AtLeast or Certainty.SoFar || (figure.Estimate.Certainty == Certainty.Unknown && figure.Estimate.UnknownPercent > 0))
        {
            words.Add(format.Missing(figure.Estimate));
        }
        if (figure.Caveats.HasFlag(MetricCaveats.OutsideRange))
        {
            words.Add("outside what the model is good for");
        }
        if (figure.Caveats.HasFlag(MetricCaveats.ChargeAssumed))
        {
            words.Add("minerals assumed, not measured");
        }
        if (figure.Caveats.HasFlag(MetricCaveats.NotConverged))
        {
            words.Add("did not settle: take it as rough");
        }
        if (figure.Caveats.HasFlag(MetricCaveats.DensityEstimated))
        {
            words.Add("a density is estimated");
        }
        return string.Join(", ", words);
    }
}
