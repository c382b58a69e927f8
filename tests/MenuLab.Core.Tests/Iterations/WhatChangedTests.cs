using CsCheck;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Iterations;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Balance;

namespace MenuLab.Core.Tests.Iterations;

public class WhatChangedTests
{
    private static readonly (IngredientId Id, string Name, Composition Composition)[] Pantry =
    [
        (Id(1), "Toasted barley tea", Made.Water),
        (Id(2), "Quince cordial", Made.Of((Component.Sucrose, 0.3), (Component.Malic, 4e-4))),
        (Id(3), "Verjus", Made.Of((Component.Tartaric, 1.2e-4), (Component.Malic, 9e-5), (Component.Glucose, 0.01))),
        (Id(4), "Fennel syrup", Made.Syrup),
        (Id(5), "Pear spirit", Made.Spirit),
    ];

    private static readonly BuildModel Shaken = new(Made.Shaken, Made.Cubes, Made.Highball, Made.Cubes);

    [Fact]
    public void An_amount_that_changed_is_told_with_both_figures_and_the_unit_once()
    {
        var changes = WhatChanged.Between(Drink(Pour(3, 5)), Drink(Pour(3, 7.5)));
        var line = Assert.Single(changes.ChangedLines);
        Assert.Equal(LineAspects.Amount, line.What);
        Assert.Equal(2.5, line.MillilitresDifference, 9);
        Assert.Equal(2.5 * Made.Syrup.GramsPerMillilitre, line.GramsDifference, 9);
        Assert.Equal("Fennel syrup 5 → 7.5 mL", changes.Reason(HouseFormat.Plain));
        Assert.Equal("Fennel syrup 5 → 7,5 mL", changes.Reason(new HouseFormat(NumberPattern.Comma)));
    }

    [Fact]
    public void The_reason_puts_amounts_by_size_before_the_build_and_counts_what_it_leaves_out()
    {
        var before = Drink(Pour(0, 45), Pour(1, 30), Pour(3, 5)) with { Build = new Build { Method = "shaken", Seconds = 12 }, Models = Shaken };
        var after = Drink(Pour(0, 45), Pour(1, 20), Pour(3, 7.5), Pour(2, 15)) with { Build = new Build { Method = "shaken", Seconds = 10 }, Models = Shaken };
        var changes = WhatChanged.Between(before, after);
        Assert.Equal("Verjus in (15 mL), Quince cordial 30 → 20 mL, Fennel syrup 5 → 7.5 mL, shaken 12 → 10 s", changes.Reason(HouseFormat.Plain));
        var more = WhatChanged.Between(before, after with { Name = "Slack water", Style = "short_sour" });
        Assert.Equal("Verjus in (15 mL), Quince cordial 30 → 20 mL, Fennel syrup 5 → 7.5 mL and 3 more", more.Reason(HouseFormat.Plain));
        Assert.Equal(["shaken 12 → 10 s", "called Slack water", "style short sour"], more.InWords(HouseFormat.Plain).Skip(3));
        Assert.Equal(6, more.Count);
    }

    [Fact]
    public void Lines_are_aligned_by_ingredient_and_then_by_their_order_never_by_position()
    {
        var changes = WhatChanged.Between(Drink(Pour(0, 45), Pour(2, 15), Pour(2, 5)), Drink(Pour(2, 10), Pour(0, 45), Pour(4, 20), Pour(2, 5)));
        Assert.Equal(
            [("Toasted barley tea", LineAspects.None), ("Pear spirit", LineAspects.Added), ("Verjus", LineAspects.Amount), ("Verjus", LineAspects.None)],
            changes.Lines.Select(l => (l.Name, l.What)));
        Assert.True(changes.IsReordered);
    }

    [Fact]
    public void The_same_pour_written_in_another_unit_is_no_change_and_a_range_instead_of_a_figure_is_one()
    {
        var millilitres = Drink(Pour(1, 22.5));
        var ounces = Drink(Pour(1, 22.5) with { Line = Pour(1, 22.5).Line with { Text = "¾ oz quince cordial", Amount = 0.75, Unit = Unit.FluidOunce } });
        Assert.True(WhatChanged.Between(millilitres, ounces).IsNothing);
        var range = Drink(Pour(1, 22.5) with { Line = Pour(1, 22.5).Line with { AmountLow = 20, AmountHigh = 25 } });
        Assert.Equal("Quince cordial 22.5 → 20–25 mL", WhatChanged.Between(millilitres, range).Reason(HouseFormat.Plain));
        var half = Drink(Pour(1, 15) with { Line = Pour(1, 15).Line with { Amount = 0.5, Unit = Unit.FluidOunce } });
        Assert.Equal("Quince cordial ¾ → ½ fl oz", WhatChanged.Between(ounces, half).Reason(HouseFormat.Plain));
        Assert.Equal("Quince cordial 22.5 mL → ½ fl oz", WhatChanged.Between(millilitres, half).Reason(HouseFormat.Plain));
    }

    [Fact]
    public void Place_time_temperature_and_treatment_are_told_apart_and_make_one_change_of_a_line()
    {
        var line = Pour(2, 5);
        var other = line with { Line = line.Line with { Place = Place.Rinse, Joins = Joins.OnTop, StartCelsius = 22, Treatment = "fine-strained" } };
        var changes = WhatChanged.Between(Drink(line), Drink(other));
        Assert.Equal(LineAspects.Place | LineAspects.Joins | LineAspects.Start | LineAspects.Treatment, Assert.Single(changes.ChangedLines).What);
        Assert.Equal(1, changes.Count);
        Assert.Equal("Verjus now a rinse and now on top and from 22° instead of 4° and now fine-strained", changes.Reason(HouseFormat.Plain));
    }

    [Fact]
    public void A_corrected_label_and_a_new_price_are_told_as_what_the_house_reckons_with()
    {
        var line = Pour(2, 5) with { PricePerGram = 0.01 };
        Assert.Equal("Verjus: new figures in the pantry", WhatChanged.Between(Drink(line), Drink(line with { PricePerGram = 0.02 })).Reason(HouseFormat.Plain));
        Assert.Equal(
            LineAspects.Reckoned,
            Assert.Single(WhatChanged.Between(Drink(line), Drink(line with { Composition = CompositionText.Hash(Made.Syrup) })).ChangedLines).What);
    }

    [Fact]
    public void What_was_typed_without_a_figure_is_told_without_one()
    {
        var sprig = Pour(4, 1.4) with { Line = Pour(4, 1.4).Line with { Amount = double.NaN, Unit = Unit.Sprig, Place = Place.Garnish } };
        Assert.Equal("Pear spirit in (sprig)", WhatChanged.Between(Drink(), Drink(sprig)).Reason(HouseFormat.Plain));
    }

    [Fact]
    public void The_difference_of_an_amount_is_told_in_the_unit_typed_or_in_millilitres_where_that_changed_too()
    {
        var drops = Pour(2, 0.1) with { Line = Pour(2, 0.1).Line with { Amount = 2, Unit = Unit.Drop } };
        var more = Pour(2, 0.2) with { Line = Pour(2, 0.2).Line with { Amount = 4, Unit = Unit.Drop } };
        Assert.Equal("+2 drops", LineChange.Of(drops, more).AmountInWords(HouseFormat.Plain));
        Assert.Equal("−4.8 mL", LineChange.Of(Pour(2, 5), more).AmountInWords(HouseFormat.Plain));
        Assert.Equal(("in", "out", ""), (LineChange.Of(null, more).AmountInWords(HouseFormat.Plain), LineChange.Of(more, null).AmountInWords(HouseFormat.Plain), LineChange.Of(more, more).AmountInWords(HouseFormat.Plain)));
        Assert.Throws<ArgumentException>(() => LineChange.Of(null, null));
    }

    [Fact]
    public void A_text_that_stood_twice_and_goes_once_is_one_that_went()
    {
        var before = Drink(Pour(0, 45)) with { KeptAsTyped = ["a whisper of beet leaf", "a whisper of beet leaf"] };
        var after = before with { KeptAsTyped = ["a whisper of beet leaf", "a rumour\tof smoke"] };
        var changes = WhatChanged.Between(before, after);
        Assert.Equal(["a whisper of beet leaf"], changes.TextsRemoved);
        Assert.Equal("“a rumour of smoke” in, kept as typed, “a whisper of beet leaf” out", changes.Reason(HouseFormat.Plain));
    }

    [Fact]
    public void Another_method_brings_its_ice_along_as_one_change_and_ice_that_somebody_named_is_a_change_of_its_own()
    {
        var crushed = new IceForm("crushed", "Crushed ice", -0.5, 0.05, 60, "test");
        var stirred = Made.Shaken with { Key = "stirred", Name = "Stirred", Ice = "crushed" };
        var before = Drink(Pour(0, 45)) with { Build = new Build { Method = "shaken" }, Models = Shaken };
        var after = before with { Build = new Build { Method = "stirred" }, Models = new BuildModel(stirred, crushed, Made.Highball, Made.Cubes) };
        Assert.Equal([BuildPart.Method], WhatChanged.Between(before, after).Build.Select(b => b.Part));
        var named = before with { Build = before.Build with { Ice = "crushed" }, Models = before.Models with { MethodIce = crushed } };
        Assert.Equal([new BuildChange(BuildPart.Ice, "Cubes", "Crushed ice")], WhatChanged.Between(before, named).Build);
        var measuredAgain = before with { Models = before.Models with { Glass = Made.Highball with { WashLineMillilitres = 260 } } };
        Assert.Equal([BuildPart.Reckoned], WhatChanged.Between(before, measuredAgain).Build.Select(b => b.Part));
    }

    [Fact]
    public void Between_a_state_and_itself_there_is_nothing_and_no_figure_moved() => Drinks.Sample(drink =>
    {
        var changes = WhatChanged.Between(drink, drink);
        var balance = Balance(drink);
        return changes.IsNothing && changes.Reason(HouseFormat.Plain) == "" && changes.InWords(HouseFormat.Plain).Count == 0
            && WhatChanged.Figures(balance, balance).All.All(f => !f.IsBeyondRounding && f.Difference is 0 or double.NaN);
    });

    [Fact]
    public void Every_line_of_both_states_appears_exactly_once() => Pairs.Sample(pair =>
    {
        var changes = WhatChanged.Between(pair.Item1, pair.Item2);
        Assert.Equal(pair.Item1.Lines.Count, changes.Lines.Select(l => l.Before).OfType<SnapshotLine>().Distinct(ReferenceEqualityComparer.Instance).Count());
        Assert.Equal(pair.Item2.Lines.Count, changes.Lines.Select(l => l.After).OfType<SnapshotLine>().Distinct(ReferenceEqualityComparer.Instance).Count());
        Assert.Equal(pair.Item1.Lines.Count, changes.Lines.Count(l => l.Before is not null));
        Assert.Equal(pair.Item2.Lines.Count, changes.Lines.Count(l => l.After is not null));
        Assert.All(changes.Lines, l => Assert.True(l.Before is null || l.After is null || l.Before.Line.Ingredient == l.After.Line.Ingredient));
    });

    [Fact]
    public void Backwards_the_same_changes_are_mirrored() => Pairs.Sample(pair =>
    {
        var there = WhatChanged.Between(pair.Item1, pair.Item2);
        var back = WhatChanged.Between(pair.Item2, pair.Item1);
        Assert.Equal(there.Count, back.Count);
        Assert.Equal(there.IsReordered, back.IsReordered);
        Assert.Equal(there.TextsAdded, back.TextsRemoved);
        Assert.Equal(there.Build.Select(b => b with { Before = b.After, After = b.Before }), back.Build);
        Assert.Equal(
            there.Lines.Select(l => (l.After, l.Before, Mirrored(l.What))).ToHashSet(),
            back.Lines.Select(l => (l.Before, l.After, l.What)).ToHashSet());
        var figures = WhatChanged.Figures(Balance(pair.Item1), Balance(pair.Item2));
        var mirrored = WhatChanged.Figures(Balance(pair.Item2), Balance(pair.Item1));
        Assert.All(figures.All.Zip(mirrored.All), f => Assert.Equal(f.First.Difference, -f.Second.Difference));
        Assert.All(figures.All.Zip(mirrored.All), f => Assert.Equal(f.First.IsBeyondRounding, f.Second.IsBeyondRounding));
    });

    [Fact]
    public void Where_nothing_changed_the_balance_is_the_same() => Pairs.Sample(pair =>
    {
        // The same drink written anew, so that the two differ in text only.
        var (drink, _) = pair;
        var rewritten = drink with { Lines = [.. drink.Lines.Select(l => l with { Line = l.Line with { Text = "written anew" } })] };
        Assert.True(WhatChanged.Between(drink, rewritten).IsNothing);
        Assert.Equal(Balance(drink).Mixed[Metric.Sugar], Balance(rewritten).Mixed[Metric.Sugar]);
        Assert.Equal(WhatChanged.Between(drink, pair.Item2).IsNothing, WhatChanged.Between(rewritten, pair.Item2).IsNothing);
    });

    [Fact]
    public void A_reason_that_writes_itself_can_always_be_saved() => Pairs.Sample(pair =>
    {
        var changes = WhatChanged.Between(pair.Item1, pair.Item2);
        var reason = changes.Reason(HouseFormat.Plain);
        Assert.Equal(changes.IsNothing, reason.Length == 0);
        Assert.Equal(changes.Count, changes.InWords(HouseFormat.Plain).Count);
        Assert.True(reason.Length <= Iteration.ReasonMaxLength && !reason.Any(char.IsControl));
    });

    [Fact]
    public void A_reason_of_long_names_is_cut_to_what_can_be_saved()
    {
        var lines = Enumerable.Range(1, 3).Select(i => Pour(0, i) with { IngredientName = new string('n', 300), Line = Pour(0, i).Line with { Ingredient = Id((byte)(20 + i)) } });
        var reason = WhatChanged.Between(Drink(), Drink([.. lines])).Reason(HouseFormat.Plain);
        Assert.Equal(Iteration.ReasonMaxLength, reason.Length);
        Assert.EndsWith("…", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_states_are_aligned_in_one_table_and_a_line_keeps_its_row()
    {
        var rows = AlignedLines.Of([Drink(Pour(0, 45), Pour(1, 30)), Drink(Pour(0, 45), Pour(2, 15), Pour(1, 20)), Drink(Pour(1, 15), Pour(3, 5))]);
        Assert.Equal(["Toasted barley tea", "Verjus", "Quince cordial", "Fennel syrup"], rows.Select(r => r.Name));
        Assert.Equal([true, true, false], rows[0].Lines.Select(l => l is not null));
        Assert.Equal([30, 20, 15], rows[2].Lines.Select(l => l!.Line.Millilitres));
    }

    [Fact]
    public void A_difference_is_that_of_the_printed_figures_and_equal_where_these_are_equal()
    {
        var sugar = Metrics.Info(Metric.Sugar);
        // Printed with one decimal: 13.0 and 10.4.
        var change = new MetricChange(sugar, Of(13.04, 0.2), Of(10.36, 0.2));
        Assert.Equal((-2.6, true, "−2.6"), (Math.Round(change.Difference, 9), change.IsBeyondRounding, change.InWords(HouseFormat.Plain)));
        var equal = new MetricChange(sugar, Of(13.04, 0.2), Of(12.96, 0.2));
        Assert.Equal((false, "="), (equal.IsBeyondRounding, equal.InWords(HouseFormat.Plain)));

        static Estimate Of(double value, double uncertainty) => new(value, value - 1.96 * uncertainty, value + 1.96 * uncertainty, "g/100 mL", 0);
    }

    [Theory]
    [InlineData(60, 0, "unknown")]
    [InlineData(0, 60, "unknown")]
    [InlineData(60, 60, "unknown")]
    [InlineData(20, 0, "so far −3.00")]
    [InlineData(0, 0, "−3.00")]
    public void What_is_unknown_stays_unknown_in_a_difference(double unknownBefore, double unknownAfter, string words)
    {
        var change = new MetricChange(Metrics.Info(Metric.Sugar), new Estimate(8, 8, 8, "g/100 mL", unknownBefore), new Estimate(5, 5, 5, "g/100 mL", unknownAfter));
        Assert.Equal(words, change.InWords(HouseFormat.Plain));
        Assert.Equal(words == "unknown", double.IsNaN(change.Difference));
    }

    [Fact]
    public void A_drink_without_served_figures_is_held_against_the_other_before_ice()
    {
        var served = Drink(Pour(0, 45), Pour(1, 20)) with { Models = Shaken };
        Assert.NotNull(Balance(served).Served);
        var figures = WhatChanged.Figures(Balance(served), Balance(Drink(Pour(0, 45), Pour(1, 20))));
        Assert.False(figures.IsServed);
        Assert.Equal(0, figures[Metric.Sugar].Difference);
        Assert.True(WhatChanged.Figures(Balance(served), Balance(served)).IsServed);
    }

    [Fact]
    public void A_sentence_names_the_largest_changes_and_the_figures_that_moved_most()
    {
        var before = Drink(Pour(0, 45), Pour(1, 30), Pour(2, 7.5));
        var after = Drink(Pour(0, 45), Pour(1, 22.5), Pour(2, 15));
        var figures = WhatChanged.Figures(Balance(before), Balance(after));
        var sentence = WhatChanged.Between(before, after).Sentence(figures, HouseFormat.Plain);
        Assert.StartsWith("7.5 mL less Quince cordial and 7.5 mL more Verjus took ", sentence, StringComparison.Ordinal);
        Assert.Contains($"sugar from {Figure(figures[Metric.Sugar].Before)} to {Figure(figures[Metric.Sugar].After)} g/100 mL", sentence, StringComparison.Ordinal);
        Assert.Equal("Nothing changed.", WhatChanged.Between(after, after).Sentence(WhatChanged.Figures(Balance(after), Balance(after)), HouseFormat.Plain));

        static string Figure(Estimate estimate) => HouseFormat.Plain.Value(estimate, 2);
    }

    [Fact]
    public void A_change_of_words_alone_is_said_to_have_moved_no_figure()
    {
        var before = Drink(Pour(0, 45), Pour(1, 30));
        var figures = WhatChanged.Figures(Balance(before), Balance(before));
        Assert.Equal(
            "Called Slack water: nothing that the figures count.",
            WhatChanged.Between(before, before with { Name = "Slack water" }).Sentence(figures, HouseFormat.Plain));
    }

    private static LineAspects Mirrored(LineAspects what) =>
        what switch { LineAspects.Added => LineAspects.Removed, LineAspects.Removed => LineAspects.Added, _ => what };

    private static readonly Gen<SnapshotLine> Lines =
        Gen.Select(Gen.Int[0, Pantry.Length - 1], Gen.Int[0, 24], Gen.Int[0, 5], Gen.Int[0, 2], Gen.Bool.Select(cold => cold ? 4.0 : 22.0)).Select((which, steps, place, joins, start) =>
        {
            var line = Pour(which, 2.5 * steps);
            return line with { Line = line.Line with { Place = place < 4 ? Place.In : (Place)(place - 3), Joins = (Joins)joins, StartCelsius = start } };
        });

    private static readonly string[] Texts = ["a whisper of beet leaf", "smoke\u0007 and mirrors", "three of those"];

    private static readonly Gen<Snapshot> Drinks =
        Gen.Select(Lines.List[0, 8], Gen.Int[0, 2].Select(i => Texts[i]).List[0, 3], Gen.Int[0, 3], Gen.Bool.Select(ebb => ebb ? "Ebb" : "Slack water"))
            .Select((lines, texts, build, name) => Drink([.. lines]) with
            {
                Name = name,
                KeptAsTyped = texts,
                Build = new Build { Method = build > 1 ? "shaken" : null, Seconds = build > 2 ? 12 : null, Steps = build > 0 ? ["Strain."] : [] },
                Models = build > 1 ? Shaken : Made.NoBuild,
            });

    private static readonly Gen<(Snapshot, Snapshot)> Pairs = Gen.Select(Drinks, Drinks);

    private static DrinkBalance Balance(Snapshot drink) =>
        drink.Recompute(hash => Pantry.First(i => CompositionText.Hash(i.Composition) == hash).Composition, HarbourDrink.Measures);

    private static Snapshot Drink(params SnapshotLine[] lines) => new() { Name = "Ebb", Lines = lines, Build = new Build(), Models = Made.NoBuild, Measures = 1 };

    private static SnapshotLine Pour(int which, double millilitres)
    {
        var (id, name, composition) = Pantry[which];
        var line = new DraftLine
        {
            Text = $"{millilitres} {name}", Ingredient = id, Amount = millilitres, Unit = Unit.Millilitre, Millilitres = millilitres,
            Grams = millilitres * composition.GramsPerMillilitre, GramsUncertainty = 0.25, StartCelsius = 4,
        };
        return new SnapshotLine(line, name, CompositionText.Hash(composition), null);
    }

    private static IngredientId Id(byte number) => new(new Guid(0, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 1, number));
}
