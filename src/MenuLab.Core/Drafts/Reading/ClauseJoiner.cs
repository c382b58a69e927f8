namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Puts together what one source line says of one thing in several clauses: "lime juice, bottled"; "fennel seed, 1
/// pinch"; "45 ml (1 1/2 oz) grape juice"; "8 basil leaves, muddled".
/// </summary>
internal static class ClauseJoiner
{
    public static List<Clause> Join(List<Clause> clauses, Func<Clause, Clause, bool> isOneName, Func<Clause, bool> isKnown)
    {
        var joined = new List<Clause>(clauses.Count);
        Clause? label = null;
        for (var i = 0; i < clauses.Count; i++)
        {
            var clause = clauses[i];
            var last = joined.Count > 0 ? joined[^1] : null;
            if (last is not null && last.Trouble.Length == 0 && Belongs(last, clause, isOneName, isKnown))
            {
                last.Absorb(clause);
                continue;
            }
            // "Garnish: lemon peel, mint": what follows the label without an amount is garnish too.
            if (clause.Says(Sense.Garnish) && clause.Says(Sense.Label))
            {
                label = clause;
            }
            else if (label is not null && clause.HasName && !clause.HasAmount && !clause.HasBuild && clause.Link is Link.Soft or Link.Run)
            {
                clause.Said.Add(Sense.Garnish);
            }
            joined.Add(clause);
        }
        return joined;
    }

    private static bool Belongs(Clause last, Clause clause, Func<Clause, Clause, bool> isOneName, Func<Clause, bool> isKnown)
    {
        if (clause.Trouble.Length > 0 || clause.Ratio is not null || last.Ratio is not null || clause.Says(Sense.EqualParts) || last.Says(Sense.EqualParts) || clause.Says(Sense.Total)
            || clause.Says(Sense.Makes))
        {
            return false;
        }
        // "20 lemon/lime", "lemon/lime 20": one of the two.
        if (clause.Link == Link.Slash && last.HasName && clause.HasName && last.HasAmount != clause.HasAmount && !last.HasBuild && !clause.HasBuild && last.OrAt < 0 && clause.OrAt < 0
            && !last.SaysPlace && !clause.SaysPlace && isKnown(last) && isKnown(clause) && (last.HasAmount || clause.Amount!.Value.End > clause.Name.Max()))
        {
            last.OrAt = clause.From - 1;
            return true;
        }
        // "45 ml / 1.5 oz orange juice", "45 ml (1 1/2 oz) grape juice": the amount twice.
        if (last.IsBareAmount && clause.HasAmount && !clause.HasBuild && clause.Link is Link.Soft or Link.Slash && last.IsBareAmount)
        {
            return clause.HasName || clause.InBrackets;
        }
        if (clause.Link is not (Link.Soft or Link.Run) && !(clause.Link == Link.Colon))
        {
            return false;
        }
        // "45 ml . grape juice"
        if (last.IsBareAmount && clause.HasName && !clause.HasAmount && !clause.HasBuild)
        {
            return true;
        }
        // "fennel seed, 1 pinch"; "apple juice: 45 ml"; but "apple juice, 45 ml honey" is two.
        if (last.HasName && !last.HasAmount && last.Unit is null && !last.HasBuild && (clause.IsBareAmount || IsMeasureWord(clause)) && (clause.Unit is not null || isKnown(last)))
        {
            return true;
        }
        if (clause.Link == Link.Colon)
        {
            return false;
        }
        // "1 egg white (40 g)" says the amount again.
        if (last.HasName && last.HasAmount && clause.InBrackets && clause.IsBareAmount)
        {
            return true;
        }
        // "8 basil leaves, muddled"; "white wine, from the fridge"; "cider vinegar, rinse, dump"
        if (last.HasName && !clause.HasName && !clause.HasAmount && clause.Unit is null && !clause.HasBuild
            && (clause.Treatments.Count > 0 || !double.IsNaN(clause.StartCelsius) || clause.Says(Sense.Rinse) || clause.Says(Sense.OnTop) || clause.Says(Sense.Beside)
                || (clause.Says(Sense.Top) && !last.HasAmount) || (clause.Says(Sense.Garnish) && last.HasName)))
        {
            return true;
        }
        if (last.HasName && last.Says(Sense.Rinse) && !clause.HasName && !clause.HasAmount && clause.HasBuild && clause.Build.All(b => b.Meaning is { Sense: Sense.Strain, Key: "open_pour" }))
        {
            // A rinse that is dumped is poured away; that says nothing of how the drink is poured.
            clause.Build.Clear();
            return true;
        }
        return last.HasName && clause.HasName && !clause.HasAmount && clause.Unit is null && !clause.HasBuild && !clause.SaysPlace && isOneName(last, clause);
    }

    private static bool IsMeasureWord(Clause clause) =>
        clause.Unit is not null && !clause.HasName && !clause.HasAmount && !clause.HasBuild && clause.Trouble.Length == 0;
}
