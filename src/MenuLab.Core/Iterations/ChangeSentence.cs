using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Quantities;

namespace MenuLab.Core.Iterations;

/// <summary>
/// What was changed and what it did, as one whole sentence of a fixed pattern: "7.5 mL less Quince cordial and 7.5 mL more
/// Verjus took sugar from 13.0 to 10.4 g/100 mL and the ratio from 19.2 to 14.1." It tells and does not advise.
/// </summary>
internal static class ChangeSentence
{
    private const int CausesTold = 2;
    private const int EffectsTold = 2;

    // Volume and dilution say again what the amounts and the glass say.
    private static readonly Metric[] Told = [Metric.Sugar, Metric.Acid, Metric.SugarAcidRatio, Metric.Abv, Metric.GlassFill, Metric.Cost, Metric.Ph];

    public static string Of(WhatChanged changes, FigureChanges figures, HouseFormat format)
    {
        if (changes.IsNothing)
        {
            return "Nothing changed.";
        }
        var causes = Causes(changes, format).ToList();
        var effects = Told.Select(m => figures[m]).Where(f => f.IsBeyondRounding).OrderByDescending(Size).Take(EffectsTold).Select(f => Effect(f, format)).ToList();
        var unknown = effects.Count == 0 && Told.All(m => figures[m].Certainty == Certainty.Unknown);
        if (causes.Count == 0)
        {
            return $"{ChangeWords.Capital(string.Join(", ", changes.InWords(format)))}: nothing that the figures count.";
        }
        var subject = ChangeWords.Capital(InAList(causes));
        return effects.Count > 0 ? $"{subject} took {string.Join(" and ", effects)}."
            : unknown ? $"{subject}: what it did to the figures is not known."
            : $"{subject} moved none of the large figures.";
    }

    private static string InAList(List<string> causes)
    {
        var more = causes.Count - CausesTold;
        return causes.Count == 1 ? causes[0]
            : more <= 0 ? $"{causes[0]} and {causes[1]}"
            : $"{causes[0]}, {causes[1]} and {more} other {(more == 1 ? "change" : "changes")}";
    }

    private static IEnumerable<string> Causes(WhatChanged changes, HouseFormat format)
    {
        var lines = changes.ChangedLines.Where(l => l.Before?.Line.Place == Place.In || l.After?.Line.Place == Place.In || l.What.HasFlag(LineAspects.Reckoned));
        foreach (var line in lines.OrderByDescending(l => double.IsNaN(l.MillilitresDifference) ? 0 : Math.Abs(l.MillilitresDifference)))
        {
            if (Cause(line, format) is { Length: > 0 } cause)
            {
                yield return cause;
            }
        }
        foreach (var change in changes.Build)
        {
            if (Cause(change, changes, format) is { Length: > 0 } cause)
            {
                yield return cause;
            }
        }
    }

    private static string Cause(LineChange line, HouseFormat format)
    {
        switch (line.What)
        {
            case LineAspects.Added:
                return $"adding {Amount(line.After!.Line, format)}{line.Name}";
            case LineAspects.Removed:
                return $"leaving out {Amount(line.Before!.Line, format)}{line.Name}";
            case LineAspects.Reckoned:
                return $"new figures for {line.Name}";
        }
        var (before, after) = (line.Before!.Line, line.After!.Line);
        if (!line.What.HasFlag(LineAspects.Amount))
        {
            return line.What.HasFlag(LineAspects.Place) ? $"{line.Name} in another place"
                : line.What.HasFlag(LineAspects.Joins) ? $"{line.Name} joining at another time"
                : line.What.HasFlag(LineAspects.Start) ? $"{line.Name} from {format.Degrees(after.StartCelsius)} instead of {format.Degrees(before.StartCelsius)}"
                : line.What.HasFlag(LineAspects.Reckoned) ? $"new figures for {line.Name}"
                : "";
        }
        var (difference, unit) = ChangeWords.Difference(before, after);
        return !double.IsFinite(difference) || difference == 0
            ? $"another amount of {line.Name}"
            : $"{ChangeWords.Figure(Math.Abs(difference), unit, format)} {UnitLabel.Of(unit, Math.Abs(difference) <= 1)} {(difference > 0 ? "more" : "less")} {line.Name}";
    }

    private static string Cause(BuildChange change, WhatChanged changes, HouseFormat format)
    {
        var (before, after) = (Or(change.Before), Or(change.After));
        return change.Part switch
        {
            BuildPart.Method => $"method {after} instead of {before}",
            BuildPart.Ice or BuildPart.Glass => $"{after} instead of {before}",
            BuildPart.ServedOn => $"serving on {after} instead of {before}",
            BuildPart.Reckoned => "new figures for method, ice or glass",
            // The model of a method takes no seconds yet, so they cannot have moved a figure.
            _ => "",
        };

        static string Or(string name) => name.Length == 0 ? "none said" : char.ToLowerInvariant(name[0]) + name[1..];
    }

    private static string Amount(DraftLine line, HouseFormat format) => ChangeWords.Amount(line, format) is { Length: > 0 } amount ? amount + " " : "";

    private static string Effect(MetricChange change, HouseFormat format)
    {
        var name = change.Info.Metric switch
        {
            Metric.Sugar => "sugar",
            Metric.Acid => "acid",
            Metric.SugarAcidRatio => "the ratio",
            Metric.Abv => "the strength",
            Metric.GlassFill => "the glass",
            Metric.Cost => "the cost",
            _ => change.Info.Name,
        };
        var unit = change.Info.Metric == Metric.SugarAcidRatio || change.Info.Unit.Length == 0 ? "" : " " + change.Info.Unit;
        var so = change.Certainty == Certainty.Plain ? "" : ", as far as it is known,";
        return $"{name}{so} from {format.Number(change.Before.Value, change.Decimals)} to {format.Number(change.After.Value, change.Decimals)}{unit}";
    }

    private static double Size(MetricChange change) => Math.Abs(change.Difference) / Math.Max(Math.Abs(change.Before.Value), Math.Abs(change.After.Value));
}
