namespace MenuLab.Core.Drafts.Rounds;

/// <summary>"Three across": one line in steps from pour to pour.</summary>
public static class Across
{
    /// <summary>The amounts of a line across the pours.</summary>
    /// <param name="line">The line; it must have an amount.</param>
    /// <param name="middle">What the middle pour gets (of an even number the lower of the two in the middle), in the line's unit; as typed.</param>
    /// <param name="step">Step from pour to pour, above 0, in the line's unit. The others fall on the pour grid, unless the step itself is finer.</param>
    /// <param name="count">How many pours, 2 to 6.</param>
    /// <param name="steps">The house's pour grid.</param>
    /// <returns>An amount per pour, A first, rising; or what is wrong.</returns>
    public static Result<IReadOnlyList<CellAmount>> Of(PlacedLine line, double middle, double step, int count, PourStep steps)
    {
        var problems = new List<Problem>();
        if (line.Content.Amount.Value is null)
        {
            problems.Add(new Problem("line", $"\"{line.Content.Text}\" has no amount to spread."));
        }
        if (count is < Round.FewestPours or > Round.MostPours)
        {
            problems.Add(new Problem("pours", $"A round has {Round.FewestPours} to {Round.MostPours} pours."));
        }
        if (!(step > 0 && step <= Draft.LargestAmount))
        {
            problems.Add(new Problem("step", "The step is above zero."));
        }
        var below = (count - 1) / 2;
        if (!(middle >= 0 && middle <= Draft.LargestAmount) || middle + (count - 1 - below) * step > Draft.LargestAmount)
        {
            problems.Add(new Problem("amount", "An amount is zero or more, and at most a million."));
        }
        else if (middle - below * step < 0)
        {
            problems.Add(new Problem("step", "The smallest amount would be below zero: take a smaller step, or more in the middle."));
        }
        if (problems.Count > 0)
        {
            return Result.Invalid<IReadOnlyList<CellAmount>>(problems);
        }
        var unit = line.Content.Amount.Unit;
        // Whoever steps more finely than a jigger means it, and has a scale.
        var grid = steps.Of(unit, middle) is { } finest && step >= finest ? finest : 0;
        return Result.Ok<IReadOnlyList<CellAmount>>([.. Enumerable.Range(0, count).Select(i => new CellAmount((PourLetter)i, line.Line, Amount(i - below)))]);

        double Amount(int away) => away == 0 || grid == 0 ? Math.Round(middle + away * step, 9) : PourStep.Snap(middle + away * step, grid);
    }
}
