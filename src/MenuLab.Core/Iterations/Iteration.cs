using System.Globalization;
using System.Text;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Iterations;

/// <summary>Identifies an iteration.</summary>
/// <param name="Value">A version 7 Guid.</param>
public readonly record struct IterationId(Guid Value)
{
    /// <summary>A new id; later ids sort later.</summary>
    public static IterationId New() => new(Guid.CreateVersion7());
}

/// <summary>What computed a balance: the engine and the numbers of the constants in force (architecture 1.8).</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Measures">Number of the measures set.</param>
/// <param name="Perception">Number of the perception set; 0 for none.</param>
/// <param name="Bands">Number of the bands set; 0 for none.</param>
/// <param name="Ice">Number of the set of methods, ices and glasses; 0 for none.</param>
/// <param name="Rules">Edition of the rules; 0 for none.</param>
/// <param name="Jurisdiction">Whose rules, e.g. "EU"; empty for none.</param>
public sealed record EngineStamp(int Engine, int Measures, int Perception = 0, int Bands = 0, int Ice = 0, int Rules = 0, string Jurisdiction = "");

/// <summary>The figures that lists, maps and plots read, of the drink as served or, where that is not known, as mixed; null = unknown.</summary>
public sealed record IterationFigures
{
    /// <summary>Volume, mL.</summary>
    public double? Volume { get; init; }

    /// <summary>Strength, % vol.</summary>
    public double? Abv { get; init; }

    /// <summary>Sugar, g/100 mL.</summary>
    public double? Sugar { get; init; }

    /// <summary>Sweetness as sucrose, g/100 mL.</summary>
    public double? Sweetness { get; init; }

    /// <summary>Acid as citric, g/100 mL.</summary>
    public double? Acid { get; init; }

    /// <summary>Sugar to acid.</summary>
    public double? SugarAcidRatio { get; init; }

    /// <summary>pH.</summary>
    public double? Ph { get; init; }

    /// <summary>°Bx.</summary>
    public double? Brix { get; init; }

    /// <summary>Energy by EU factors, kcal.</summary>
    public double? Energy { get; init; }

    /// <summary>Dilution, %.</summary>
    public double? Dilution { get; init; }

    /// <summary>Temperature, °C.</summary>
    public double? Temperature { get; init; }

    /// <summary>Glass fill, % of the wash line.</summary>
    public double? GlassFill { get; init; }

    /// <summary>Net cost.</summary>
    public double? Cost { get; init; }

    /// <summary>Share of the volume whose sugar or acid nobody knows, %, the larger of the two.</summary>
    public double? Unknown { get; init; }

    /// <summary>The figures of a balance.</summary>
    public static IterationFigures Of(DrinkBalance balance)
    {
        var set = balance.Served ?? balance.Mixed;
        return new IterationFigures
        {
            Volume = Value(Metric.Volume),
            Abv = Value(Metric.Abv),
            Sugar = Value(Metric.Sugar),
            Sweetness = Value(Metric.Sweetness),
            Acid = Value(Metric.Acid),
            SugarAcidRatio = Value(Metric.SugarAcidRatio),
            Ph = Value(Metric.Ph),
            Brix = Value(Metric.Brix),
            Energy = Value(Metric.EnergyKilocalories),
            Dilution = Value(Metric.Dilution),
            Temperature = Value(Metric.FinalTemperature),
            GlassFill = Value(Metric.GlassFill),
            Cost = Value(Metric.Cost),
            Unknown = Known(Math.Max(set[Metric.Sugar].UnknownPercent, set[Metric.Acid].UnknownPercent)),
        };

        double? Value(Metric metric) => Known(set[metric].Value);

        static double? Known(double value) => double.IsFinite(value) ? value : null;
    }
}

/// <summary>
/// A saved revision of a drink; never changes. What lists show stands here; what was computed and from what stands in its
/// <see cref="IterationBody"/>, and what it contains in its <see cref="IterationLine"/>s.
/// </summary>
public sealed class Iteration
{
    /// <summary>Most characters in a reason.</summary>
    public const int ReasonMaxLength = 500;

    private Iteration(IterationId id, DraftId draft, int number, string reason, PersonId by, DateTimeOffset at, int draftVersion, ContentHash hash)
    {
        Id = id;
        Draft = draft;
        Number = number;
        Reason = reason;
        By = by;
        At = at;
        DraftVersion = draftVersion;
        Hash = hash;
    }

    /// <summary>Identity.</summary>
    public IterationId Id { get; private set; }

    /// <summary>The draft it is a revision of.</summary>
    public DraftId Draft { get; private set; }

    /// <summary>Its number within the draft, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>The iteration it came from; null for a draft's first.</summary>
    public IterationId? Parent { get; private set; }

    /// <summary>Why the drink was changed; may be empty.</summary>
    public string Reason { get; private set; }

    /// <summary>Who saved it.</summary>
    public PersonId By { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Version of the working copy that was saved; edits up to it may be let go.</summary>
    public int DraftVersion { get; private set; }

    /// <summary>What computed its balance.</summary>
    public EngineStamp Stamp { get; private set; } = null!;

    /// <summary>SHA-256 over its inputs and the engine version, not over computed figures (architecture 1.9).</summary>
    public ContentHash Hash { get; private set; }

    /// <summary>What lists, maps and plots read.</summary>
    public IterationFigures Figures { get; private set; } = null!;

    /// <summary>Saves a revision.</summary>
    /// <param name="id">Identity.</param>
    /// <param name="draft">The draft.</param>
    /// <param name="number">Its number within the draft: one more than the last.</param>
    /// <param name="parent">The iteration it came from.</param>
    /// <param name="reason">Why, up to 500 characters on one line.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When.</param>
    /// <param name="draftVersion">Version of the working copy.</param>
    /// <param name="snapshot">What the balance was computed from.</param>
    /// <param name="balance">The balance.</param>
    /// <param name="stamp">What computed it.</param>
    /// <returns>The iteration with its body and lines, or what is wrong with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number below 1.</exception>
    public static Result<SavedIteration> Save(
        IterationId id, DraftId draft, int number, IterationId? parent, string? reason, PersonId by, DateTimeOffset at, int draftVersion, Snapshot snapshot,
        DrinkBalance balance, EngineStamp stamp)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(reason, 0, ReasonMaxLength, nameof(Reason), "a reason", problems);
        if (problems.Count > 0)
        {
            return Result.Invalid<SavedIteration>(problems);
        }
        var inputs = SnapshotText.Write(snapshot);
        var iteration = new Iteration(id, draft, number, trimmed, by, at, draftVersion, HashOf(inputs, stamp.Engine))
        {
            Parent = parent, Stamp = stamp, Figures = IterationFigures.Of(balance),
        };
        var lines = snapshot.Lines.Select((l, i) => new IterationLine(id, i + 1, l.Line.Ingredient, l.Composition));
        return Result.Ok(new SavedIteration(iteration, new IterationBody(id, Packed.Pack(inputs), Packed.Pack(BalanceText.Write(balance))), [.. lines]));
    }

    /// <summary>The hash of inputs under an engine version.</summary>
    /// <param name="inputs">The canonical text of the snapshot, as stored (a text of an older format is not rewritten).</param>
    /// <param name="engine">Version of the engine.</param>
    public static ContentHash HashOf(ReadOnlySpan<byte> inputs, int engine) =>
        ContentHash.Of([.. Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"engine {engine}\n")), .. inputs]);
}

/// <summary>What an iteration was computed from and what was computed, packed.</summary>
public sealed class IterationBody
{
    private readonly byte[] _inputs;
    private readonly byte[] _balance;

    internal IterationBody(IterationId iteration, byte[] inputs, byte[] balance)
    {
        Iteration = iteration;
        _inputs = inputs;
        _balance = balance;
    }

    /// <summary>Whose body.</summary>
    public IterationId Iteration { get; private set; }

    /// <summary>The canonical text of the snapshot, unpacked.</summary>
    /// <exception cref="InvalidDataException">Damaged.</exception>
    public byte[] Inputs() => Packed.Unpack(_inputs);

    /// <summary>The snapshot.</summary>
    /// <exception cref="InvalidDataException">Damaged.</exception>
    public Snapshot Snapshot() => SnapshotText.Read(Inputs());

    /// <summary>The balance as it was computed.</summary>
    /// <exception cref="InvalidDataException">Damaged.</exception>
    public DrinkBalance Balance() => BalanceText.Read(Packed.Unpack(_balance));

    /// <summary>Bytes that it takes in the database.</summary>
    public int StoredBytes => _inputs.Length + _balance.Length;
}

/// <summary>What a line of an iteration contains, as a row: the edge by which "where is this used" is answered.</summary>
/// <param name="Iteration">Whose line.</param>
/// <param name="Position">Place from the top, from 1.</param>
/// <param name="Ingredient">What it is.</param>
/// <param name="Composition">Hash of what it was made of.</param>
public sealed record IterationLine(IterationId Iteration, int Position, IngredientId Ingredient, ContentHash Composition);

/// <summary>All rows of a saved iteration.</summary>
/// <param name="Iteration">What lists show.</param>
/// <param name="Body">What was computed and from what.</param>
/// <param name="Lines">What it contains.</param>
public sealed record SavedIteration(Iteration Iteration, IterationBody Body, IReadOnlyList<IterationLine> Lines);
