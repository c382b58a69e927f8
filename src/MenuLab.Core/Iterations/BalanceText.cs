using System.Text.Json;
using MenuLab.Core.Balance;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Iterations;

/// <summary>
/// A computed balance as text: UTF-8 JSON, each metric by its key with value, low, high, unknown share in per cent and
/// caveats, and each line's shares. It is compared within 1e-9, never hashed.
/// </summary>
public static class BalanceText
{
    private const int Newest = 1;
    private const int Figures = 5;

    /// <summary>A balance as text.</summary>
    public static byte[] Write(DrinkBalance balance) =>
        JsonSerializer.SerializeToUtf8Bytes(
            new BalanceDocument
            {
                Format = Newest,
                Lines = balance.Lines,
                LeavesOut = balance.Mixed.LeavesOut,
                Mixed = Document(balance.Mixed),
                Served = balance.Served is { } served ? Document(served) : null,
                ServedMissingBecause = balance.ServedMissingBecause,
                Shares = Shares(balance),
                Allergens = AllergenText.Names(balance.Allergens.Present),
                AllergensUnknown = AllergenText.Names(balance.Allergens.Unknown),
                TopUpG = Known(balance.TopUpGrams),
            },
            IterationJson.Default.BalanceDocument);

    /// <summary>The balance of a text. A metric that the text lacks is unknown; one that this version lacks is passed over.</summary>
    /// <exception cref="JsonException">It is no balance in a format that this version knows.</exception>
    public static DrinkBalance Read(ReadOnlySpan<byte> text)
    {
        var document = JsonSerializer.Deserialize(text, IterationJson.Default.BalanceDocument);
        if (document is not { Format: Newest })
        {
            throw new JsonException($"This balance is in format {document?.Format}; this version knows 1 to {Newest}.");
        }
        return new DrinkBalance(
            Set(document.Mixed, document.LeavesOut), document.Served is { } served ? Set(served, document.LeavesOut) : null, document.ServedMissingBecause, Shares(document), document.Lines,
            new AllergenSet(AllergenText.Bits(document.Allergens), AllergenText.Bits(document.AllergensUnknown)), document.TopUpG ?? double.NaN);
    }

    private static Dictionary<string, double?[]> Document(MetricSet set) => Metrics.All.ToDictionary(m => m.Key, m =>
    {
        var estimate = set[m.Metric];
        return new[] { Known(estimate.Value), Known(estimate.Low), Known(estimate.High), Known(estimate.UnknownPercent), (double)set.Caveats(m.Metric) };
    });

    private static MetricSet Set(Dictionary<string, double?[]> document, bool leavesOut)
    {
        var figures = new double[3 * Metrics.Count];
        var unknown = new float[Metrics.Count];
        var caveats = new MetricCaveats[Metrics.Count];
        Array.Fill(figures, double.NaN);
        Array.Fill(unknown, 100);
        foreach (var metric in Metrics.All)
        {
            if (document.GetValueOrDefault(metric.Key) is not { } written)
            {
                continue;
            }
            if (written.Length != Figures)
            {
                throw new JsonException($"\"{metric.Key}\" has {written.Length} figures instead of {Figures}.");
            }
            var i = (int)metric.Metric;
            for (var j = 0; j < 3; j++)
            {
                figures[3 * i + j] = written[j] ?? double.NaN;
            }
            unknown[i] = (float)(written[3] ?? double.NaN);
            caveats[i] = (MetricCaveats)(byte)(written[4] ?? 0);
        }
        return new MetricSet(figures, unknown, caveats, leavesOut);
    }

    // By metric, a figure per line; metrics in which no line has a share are left out.
    private static Dictionary<string, float?[]>? Shares(DrinkBalance balance)
    {
        var shares = Metrics.All
            .Select(m => (m.Key, Row: Enumerable.Range(0, balance.Lines).Select(l => Known((float)balance.Share(l, m.Metric))).ToArray()))
            .Where(m => m.Row.Any(s => s is not null))
            .ToDictionary(m => m.Key, m => m.Row);
        return shares.Count > 0 ? shares : null;
    }

    private static float[] Shares(BalanceDocument document)
    {
        if (document.Shares is null)
        {
            return [];
        }
        var shares = new float[document.Lines * Metrics.Count];
        Array.Fill(shares, float.NaN);
        foreach (var metric in Metrics.All)
        {
            var row = document.Shares.GetValueOrDefault(metric.Key) ?? [];
            for (var line = 0; line < row.Length; line++)
            {
                shares[line * Metrics.Count + (int)metric.Metric] = row[line] ?? float.NaN;
            }
        }
        return shares;
    }

    private static double? Known(double value) => double.IsFinite(value) ? value : null;

    private static float? Known(float value) => float.IsFinite(value) ? value : null;
}

internal sealed record BalanceDocument
{
    public required int Format { get; init; }

    public int Lines { get; init; }

    public bool LeavesOut { get; init; }

    public required Dictionary<string, double?[]> Mixed { get; init; }

    public Dictionary<string, double?[]>? Served { get; init; }

    public required string ServedMissingBecause { get; init; }

    public Dictionary<string, float?[]>? Shares { get; init; }

    public required Allergen[] Allergens { get; init; }

    public required Allergen[] AllergensUnknown { get; init; }

    public double? TopUpG { get; init; }
}
