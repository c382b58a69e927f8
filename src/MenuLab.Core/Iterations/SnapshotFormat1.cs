using System.Text.Json.Serialization;
using MenuLab.Core.Balance;
using MenuLab.Core.Drafts;
using MenuLab.Core.Pantry;

namespace MenuLab.Core.Iterations;

// Format 1, as released. It has types of its own, so that a property added to a line, a method or a glass cannot slip
// into a format that was released without it. Never change what stands here: write a format 2 beside it.
internal sealed record SnapshotFormat1
{
    public required int Format { get; init; }

    public required string Name { get; init; }

    public string? Style { get; init; }

    public required LineFormat1[] Lines { get; init; }

    public required string[] KeptAsTyped { get; init; }

    public double UncountedMl { get; init; }

    public required BuildFormat1 Build { get; init; }

    public MethodFormat1? Method { get; init; }

    public IceFormat1? MethodIce { get; init; }

    public GlassFormat1? Glass { get; init; }

    public IceFormat1? ServedIce { get; init; }

    public int Measures { get; init; }

    public string? Currency { get; init; }

    public static SnapshotFormat1 Of(Snapshot snapshot) => new()
    {
        Format = 1,
        Name = snapshot.Name,
        Style = snapshot.Style,
        Lines = [.. snapshot.Lines.Select(LineFormat1.Of)],
        KeptAsTyped = [.. snapshot.KeptAsTyped],
        UncountedMl = snapshot.UncountedMillilitres,
        Build = BuildFormat1.Of(snapshot.Build),
        Method = snapshot.Models.Method is { } method ? MethodFormat1.Of(method) : null,
        MethodIce = snapshot.Models.MethodIce is { } methodIce ? IceFormat1.Of(methodIce) : null,
        Glass = snapshot.Models.Glass is { } glass ? GlassFormat1.Of(glass) : null,
        ServedIce = snapshot.Models.ServedIce is { } servedIce ? IceFormat1.Of(servedIce) : null,
        Measures = snapshot.Measures,
        Currency = snapshot.Currency,
    };

    public Snapshot Lift() => new()
    {
        Name = Name,
        Style = Style,
        Lines = [.. Lines.Select(l => l.Lift())],
        KeptAsTyped = KeptAsTyped,
        UncountedMillilitres = UncountedMl,
        Build = Build.Lift(),
        Models = new BuildModel(Method?.Lift(), MethodIce?.Lift(), Glass?.Lift(), ServedIce?.Lift()),
        Measures = Measures,
        Currency = Currency,
    };
}

internal sealed record LineFormat1
{
    public required string Text { get; init; }

    public required Guid Ingredient { get; init; }

    public required string Name { get; init; }

    public required string Composition { get; init; }

    public double? Amount { get; init; }

    public double? AmountLow { get; init; }

    public double? AmountHigh { get; init; }

    public required Unit Unit { get; init; }

    public double? Ml { get; init; }

    public double? G { get; init; }

    public double GUncertainty { get; init; }

    public required Place Place { get; init; }

    public required Joins Joins { get; init; }

    public double StartC { get; init; }

    public required string Treatment { get; init; }

    public required string[] Assumptions { get; init; }

    public double? PricePerG { get; init; }

    public static LineFormat1 Of(SnapshotLine snapshot)
    {
        var line = snapshot.Line;
        return new LineFormat1
        {
            Text = line.Text,
            Ingredient = line.Ingredient.Value,
            Name = snapshot.IngredientName,
            Composition = snapshot.Composition.Hex,
            Amount = Known(line.Amount),
            AmountLow = Known(line.AmountLow),
            AmountHigh = Known(line.AmountHigh),
            Unit = line.Unit,
            Ml = Known(line.Millilitres),
            G = Known(line.Grams),
            GUncertainty = line.GramsUncertainty,
            Place = line.Place,
            Joins = line.Joins,
            StartC = line.StartCelsius,
            Treatment = line.Treatment,
            Assumptions = [.. line.Assumptions],
            PricePerG = snapshot.PricePerGram,
        };
    }

    public SnapshotLine Lift() => new(
        new DraftLine
        {
            Text = Text,
            Ingredient = new IngredientId(Ingredient),
            Amount = Amount ?? double.NaN,
            AmountLow = AmountLow ?? double.NaN,
            AmountHigh = AmountHigh ?? double.NaN,
            Unit = Unit,
            Millilitres = Ml ?? double.NaN,
            Grams = G ?? double.NaN,
            GramsUncertainty = GUncertainty,
            Place = Place,
            Joins = Joins,
            StartCelsius = StartC,
            Treatment = Treatment,
            Assumptions = Assumptions,
        },
        Name,
        ContentHash.FromHex(Composition),
        PricePerG);

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}

internal sealed record BuildFormat1
{
    public string? Method { get; init; }

    public double? Seconds { get; init; }

    public string? Ice { get; init; }

    public string? Glass { get; init; }

    public string? Strain { get; init; }

    public string? ServedOn { get; init; }

    public required string[] Steps { get; init; }

    public static BuildFormat1 Of(Build build) => new()
    {
        Method = build.Method, Seconds = build.Seconds, Ice = build.Ice, Glass = build.Glass, Strain = build.Strain, ServedOn = build.ServedOn, Steps = [.. build.Steps],
    };

    public Build Lift() => new() { Method = Method, Seconds = Seconds, Ice = Ice, Glass = Glass, Strain = Strain, ServedOn = ServedOn, Steps = Steps };
}

internal sealed record MethodFormat1
{
    public required string Key { get; init; }

    public required string Name { get; init; }

    public required string Ice { get; init; }

    [JsonPropertyName("ice_g_per_100ml")]
    public double IceGPer100Ml { get; init; }

    public double VesselJPerK { get; init; }

    public double VesselC { get; init; }

    public double AmbientJ { get; init; }

    public double ApproachK { get; init; }

    public bool CapAtStart { get; init; }

    public bool IceStaysIn { get; init; }

    public bool InTheGlass { get; init; }

    public bool WeighIt { get; init; }

    public double DilutionUncertainty { get; init; }

    public required string Source { get; init; }

    public static MethodFormat1 Of(MethodModel method) => new()
    {
        Key = method.Key,
        Name = method.Name,
        Ice = method.Ice,
        IceGPer100Ml = method.IceGramsPer100Millilitres,
        VesselJPerK = method.VesselJoulesPerKelvin,
        VesselC = method.VesselCelsius,
        AmbientJ = method.AmbientJoules,
        ApproachK = method.ApproachKelvin,
        CapAtStart = method.CapAtStart,
        IceStaysIn = method.IceStaysIn,
        InTheGlass = method.InTheGlass,
        WeighIt = method.WeighIt,
        DilutionUncertainty = method.DilutionUncertainty,
        Source = method.Source,
    };

    public MethodModel Lift() => new()
    {
        Key = Key,
        Name = Name,
        Ice = Ice,
        IceGramsPer100Millilitres = IceGPer100Ml,
        VesselJoulesPerKelvin = VesselJPerK,
        VesselCelsius = VesselC,
        AmbientJoules = AmbientJ,
        ApproachKelvin = ApproachK,
        CapAtStart = CapAtStart,
        IceStaysIn = IceStaysIn,
        InTheGlass = InTheGlass,
        WeighIt = WeighIt,
        DilutionUncertainty = DilutionUncertainty,
        Source = Source,
    };
}

internal sealed record IceFormat1(string Key, string Name, double C, double SurfaceWaterFraction, double ServedG, string Source)
{
    public static IceFormat1 Of(IceForm ice) => new(ice.Key, ice.Name, ice.Celsius, ice.SurfaceWaterFraction, ice.ServedGrams, ice.Source);

    public IceForm Lift() => new(Key, Name, C, SurfaceWaterFraction, ServedG, Source);
}

internal sealed record GlassFormat1(string Key, string Name, double BrimMl, double WashLineMl, string Ice, string Source)
{
    public static GlassFormat1 Of(Glass glass) => new(glass.Key, glass.Name, glass.BrimMillilitres, glass.WashLineMillilitres, glass.Ice, glass.Source);

    public Glass Lift() => new(Key, Name, BrimMl, WashLineMl, Ice, Source);
}
