using CsCheck;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Rounds;

namespace MenuLab.Core.Tests.Drafts.Rounds;

public class SharedPartTests
{
    private static readonly Unit[] Units = [Unit.Millilitre, Unit.Gram, Unit.FluidOunce, Unit.Dash];

    private static readonly RoundSize[] Sizes = [RoundSize.Full, RoundSize.Half, RoundSize.Third, RoundSize.ByWeight(35)];

    // By hand: 45 g tea and 20 g cordial are shared by three pours; verjus differs; soda joins on top; a leaf of 1 g is a garnish.
    [Fact]
    public void What_all_pours_share_is_made_once_with_a_twentieth_to_spare_and_each_glass_gets_its_own()
    {
        var garnish = Trial.Line(Trial.Tea, 1, Unit.Gram, place: Place.Garnish);
        var draft = Trial.Bench([Trial.Line(Trial.Tea, 45, Unit.Gram), Trial.Line(Trial.Cordial, 20, Unit.Gram), Trial.Line(Trial.Verjus, 10, Unit.Gram), Trial.Line(Trial.Soda, 60, joins: Joins.OnTop), Trial.Top, garnish]);
        var verjus = draft.Lines[2].Id;
        var round = Trial.Round(draft, 3, RoundSize.Full, new(PourLetter.A, verjus, 8), new CellAmount(PourLetter.C, verjus, 12));
        var shared = SharedPart.Of(round, Trial.Stock.Understand);

        Assert.Equal([141.75, 63], shared.Jug.Select(p => Math.Round(p.Grams!.Value, 9)));
        Assert.Equal(204.75, shared.JugGrams, 9);
        Assert.Equal(9.75, shared.SpareGrams, 9);
        Assert.All(shared.Glasses, g => Assert.Equal(65, g.SharedGrams, 9));
        Assert.Equal([8, 10, 12], shared.Glasses.Select(g => Math.Round(Assert.Single(g.Own).Grams!.Value, 9)));
        Assert.Equal([73, 75, 77], shared.Glasses.Select(g => Math.Round(g.Grams, 9)));
        Assert.All(shared.Glasses, g => Assert.Equal(["60 Soda water", "top soda", "1 Barley tea"], g.Later.Select(p => p.Text)));
        Assert.Equal(141.75 / Trial.Tea.Composition.GramsPerMillilitre, shared.Jug[0].Millilitres!.Value, 6);
    }

    [Fact]
    public void A_line_that_all_pours_changed_alike_is_shared_and_one_that_a_pour_does_without_is_not_told_there()
    {
        var draft = Trial.Orchard();
        var (tea, verjus) = (draft.Lines[0].Id, draft.Lines[2].Id);
        var round = Trial.Round(draft, 2, RoundSize.Full, new(PourLetter.A, tea, 50), new(PourLetter.B, tea, 50), new CellAmount(PourLetter.B, verjus, 0));
        var shared = SharedPart.Of(round, Trial.Stock.Understand);
        Assert.Equal([105, 47.25], shared.Jug.Select(p => Math.Round(p.Amount!.Value, 9)));
        Assert.Equal([1, 0], shared.Glasses.Select(g => g.Own.Count));
    }

    /// <summary>The issue asks for 0.1 g; sums close far below that.</summary>
    [Fact]
    public void Shared_part_and_what_each_glass_gets_are_all_pours_and_the_spare()
    {
        var line = Gen.Select(Gen.Int[0, 3], Gen.Double[0, 90], Gen.Int[0, 3].Select(i => Units[i]), Gen.Int[0, 5], (which, amount, unit, how) =>
            Trial.Line(Trial.Stock.Pantry.All[which], amount, unit, how == 4 ? Joins.OnTop : Joins.Mixed, how == 5 ? Place.Garnish : Place.In));
        Gen.Select(line.Array[1, 12], Gen.Int[2, 6], Gen.Int[0, 3].Select(i => Sizes[i]), Gen.Select(Gen.Int[0, 5], Gen.Int[0, 11], Gen.Double[0, 90]).Array[0, 12])
            .Sample((lines, pours, size, changes) =>
            {
                var draft = Trial.Bench(lines);
                var cells = changes.Where(c => c.Item1 < pours && c.Item2 < lines.Length).Select(c => new CellAmount((PourLetter)c.Item1, draft.Lines[c.Item2].Id, c.Item3)).ToList();
                var started = Round.Start(new RoundToStart { Id = RoundId.New(), Draft = draft.Id, Pours = pours, Size = size, Cells = cells }, draft, 1, null, Trial.Ines, Trial.Noon);
                if (!started.IsOk)
                {
                    Assert.True(draft.Lines.Sum(l => l.Place == Place.In ? l.Grams ?? 0 : 0) == 0);
                    return;
                }
                var round = started.Value;
                var shared = SharedPart.Of(round, Trial.Stock.Understand);
                var allPours = round.Pours.SelectMany(p => GlassLines.Specified(round, p.Letter, Trial.Stock.Understand)).Sum(l => l.Understood.Grams ?? 0);
                var own = shared.Glasses.Sum(g => g.Own.Concat(g.Later).Sum(p => p.Grams ?? 0));
                // A pour by weight of a drink of next to nothing multiplies every line by a billion; then the last bits are grams.
                var within = 1e-6 * Math.Max(1, allPours);
                Assert.Equal(allPours + shared.SpareGrams, shared.JugGrams + own, within);
                Assert.Equal(SharedPart.SpareShare * shared.Glasses.Sum(g => g.SharedGrams), shared.SpareGrams, within);
                // What the jug holds is never what joins later, and no line is both shared and a glass's own.
                var jug = shared.Jug.Select(p => p.Line).ToHashSet();
                Assert.DoesNotContain(round.Lines, l => jug.Contains(l.Line) && (l.Content.Joins != Joins.Mixed || l.Content.Place != Place.In || round.Differs(l)));
                Assert.DoesNotContain(shared.Glasses.SelectMany(g => g.Own.Concat(g.Later)), p => jug.Contains(p.Line));
            });
    }
}
