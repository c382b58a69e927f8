using System.Globalization;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Preps;

/// <summary>Identifies a batch of a prep.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct BatchId(Guid Value) : IComparable<BatchId>
{
    /// <summary>A new id; later ids sort later.</summary>
    public static BatchId New() => new(Guid.CreateVersion7());

    /// <inheritdoc/>
    public int CompareTo(BatchId other) => Value.CompareTo(other.Value);

    /// <summary>Sorts earlier.</summary>
    public static bool operator <(BatchId left, BatchId right) => left.CompareTo(right) < 0;

    /// <summary>Sorts earlier or is the same.</summary>
    public static bool operator <=(BatchId left, BatchId right) => left.CompareTo(right) <= 0;

    /// <summary>Sorts later.</summary>
    public static bool operator >(BatchId left, BatchId right) => left.CompareTo(right) > 0;

    /// <summary>Sorts later or is the same.</summary>
    public static bool operator >=(BatchId left, BatchId right) => left.CompareTo(right) >= 0;
}

/// <summary>One making of a prep.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Prep">The prep.</param>
/// <param name="Recipe">Number of the recipe version.</param>
/// <param name="MadeOn">Day it was made.</param>
/// <param name="MadeBy">By whom.</param>
/// <param name="Readings">What was read; null where nothing was.</param>
public sealed record PrepBatch(BatchId Id, IngredientId Prep, int Recipe, DateOnly MadeOn, PersonId MadeBy, BatchReadings? Readings);

/// <summary>What was read on a batch; a reading that nobody took is null.</summary>
public sealed record BatchReadings
{
    /// <summary>Day it was read.</summary>
    public required DateOnly ReadOn { get; init; }

    /// <summary>Finished mass, g.</summary>
    public double? Grams { get; init; }

    /// <summary>Finished volume at 20 °C, mL; with the mass it gives the density.</summary>
    public double? Millilitres { get; init; }

    /// <summary>Refractometer.</summary>
    public BrixReading? Brix { get; init; }

    /// <summary>pH.</summary>
    public double? Ph { get; init; }

    /// <summary>Titration to pH 8.1.</summary>
    public TitrationReading? Titration { get; init; }

    /// <summary>Alcohol by a laboratory or a still, % vol.</summary>
    public double? AbvPercent { get; init; }

    /// <summary>What is wrong with the readings, with the field of each and how to mend it.</summary>
    /// <param name="outcome">The prep as its recipe says it comes out.</param>
    /// <param name="madeOn">Day the batch was made.</param>
    /// <param name="today">The site's day today.</param>
    internal IReadOnlyList<Problem> Check(PrepOutcome outcome, DateOnly madeOn, DateOnly today)
    {
        var problems = new List<Problem>();
        if (Grams is null && Millilitres is null && Brix is null && Ph is null && Titration is null && AbvPercent is null)
        {
            problems.Add(new Problem(nameof(Grams), "Nothing was read; enter at least one reading."));
        }
        if (ReadOn > today)
        {
            problems.Add(new Problem(nameof(ReadOn), Say($"The reading is dated {ReadOn:yyyy-MM-dd}, after today ({today:yyyy-MM-dd}); enter the day it was taken.")));
        }
        if (ReadOn < madeOn)
        {
            problems.Add(new Problem(nameof(ReadOn), Say($"The reading is dated {ReadOn:yyyy-MM-dd}, before the batch was made ({madeOn:yyyy-MM-dd}); check both days.")));
        }
        CheckAmounts(outcome, problems);
        CheckBrix(outcome, problems);
        if (Ph is { } ph && !(ph >= 0 && ph <= 14))
        {
            problems.Add(new Problem(nameof(Ph), Say($"A pH of {ph} is not possible; give 0 to 14. Rinse the probe and set it on its buffers before reading again.")));
        }
        CheckTitration(problems);
        if (AbvPercent is { } abv && !(abv >= 0 && abv <= 96))
        {
            problems.Add(new Problem(nameof(AbvPercent), Say($"{abv} % vol is not possible here; give 0 to 96 % vol.")));
        }
        return problems;
    }

    private void CheckAmounts(PrepOutcome outcome, List<Problem> problems)
    {
        if (Grams is { } grams)
        {
            // Half a per cent and a gram are what scales differ by.
            var most = outcome.Ledger.Sum(e => e.AddedGrams + e.GasInGrams);
            if (!(grams > 0) || !double.IsFinite(grams))
            {
                problems.Add(new Problem(nameof(Grams), Say($"A finished mass of {grams} g is not possible; weigh the batch without its container.")));
            }
            else if (grams > most * 1.005 + 1)
            {
                problems.Add(new Problem(
                    nameof(Grams), Say($"{grams:0} g came out of {most:0} g: a yield of {100 * grams / most:0} %, over 100 %. Weigh without the container, or enter the whole batch as made.")));
            }
        }
        if (Millilitres is { } millilitres && !(millilitres > 0 && double.IsFinite(millilitres)))
        {
            problems.Add(new Problem(nameof(Millilitres), Say($"A finished volume of {millilitres} mL is not possible; give a volume above 0 mL.")));
        }
        if (Grams is { } g && Millilitres is { } ml && g > 0 && ml > 0 && !(g / ml >= 0.75 && g / ml <= 1.6))
        {
            problems.Add(new Problem(nameof(Millilitres), Say($"{g:0.#} g in {ml:0.#} mL is {g / ml:0.00} g/mL, which no prep has; check mass and volume, they must be of the same batch.")));
        }
    }

    private void CheckBrix(PrepOutcome outcome, List<Problem> problems)
    {
        if (Brix is not { } brix)
        {
            return;
        }
        if (!(brix.Shown >= 0 && brix.Shown <= SucroseDensity.HighestBrix))
        {
            problems.Add(new Problem(
                nameof(Brix), Say($"{brix.Shown} Brix is not possible: sugar dissolves up to about {SucroseDensity.HighestBrix:0}. Give 0 to {SucroseDensity.HighestBrix:0} Brix; look for a lost decimal point.")));
        }
        if (brix.Celsius is { } celsius && !(celsius >= BrixReading.LowestCelsius && celsius <= BrixReading.HighestCelsius))
        {
            problems.Add(new Problem(
                nameof(Brix), Say($"A Brix read at {celsius} °C cannot be corrected; bring the sample to {BrixReading.LowestCelsius:0} to {BrixReading.HighestCelsius:0} °C and read again.")));
        }
        const string instead = "A refractometer reads alcohol as sugar. Enter a titration, the density by mass and volume, or a laboratory's figure instead.";
        if (AbvPercent is null && !outcome.Composition.Knows(Component.Ethanol.Bit()))
        {
            problems.Add(new Problem(nameof(Brix), $"Nobody knows how much alcohol is in it, so a Brix reading cannot be used. {instead}"));
        }
        else
        {
            // By volume 1 % of mass is about 1.3 %.
            var massPercent = AbvPercent is { } abv ? 0.789 * abv / outcome.Composition.GramsPerMillilitre : 100 * outcome.Composition.PerGram[(int)Component.Ethanol];
            if (massPercent > Refractometer.HighestEthanolPercent)
            {
                problems.Add(new Problem(nameof(Brix), Say($"It holds about {massPercent:0.#} % alcohol by mass; above {Refractometer.HighestEthanolPercent:0} % a Brix reading is wrong. {instead}")));
            }
        }
    }

    private void CheckTitration(List<Problem> problems)
    {
        if (Titration is not { } titration)
        {
            return;
        }
        if (!(titration.TitrantMillilitres >= 0 && titration.TitrantMillilitres <= 10_000))
        {
            problems.Add(new Problem(nameof(Titration), Say($"{titration.TitrantMillilitres} mL of titrant is not possible; give 0 mL or more.")));
        }
        if (!(titration.Normality > 0 && titration.Normality <= 10))
        {
            problems.Add(new Problem(nameof(Titration), Say($"A titrant of {titration.Normality} N is not possible; give the strength on its bottle, above 0 and at most 10 N (often 0.1).")));
        }
        if (!(titration.SampleMillilitres > 0 && titration.SampleMillilitres <= 10_000))
        {
            problems.Add(new Problem(nameof(Titration), Say($"A sample of {titration.SampleMillilitres} mL is not possible; give its volume, above 0 mL (often 10).")));
        }
        if (Ph >= AcidBase.EndPoint && titration.TitrantMillilitres > 0)
        {
            problems.Add(new Problem(nameof(Titration), Say($"A liquid of pH {Ph:0.0#} needs no base to reach {AcidBase.EndPoint}; check pH and titration.")));
        }
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
