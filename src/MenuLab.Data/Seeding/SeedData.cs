using System.Globalization;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Safety;

namespace MenuLab.Data.Seeding;

/// <summary>What MenuLab ships with: ingredients, methods, ices, glasses and measures, read from the files of seed-data.</summary>
/// <param name="Pantry">All shipped ingredients with their compositions.</param>
/// <param name="Catalogue">Methods, ices and glasses.</param>
/// <param name="Measures">Measures set number 1.</param>
public sealed record SeedData(PantryList Pantry, BuildCatalogue Catalogue, MeasuresSet Measures)
{
    /// <summary>The safety and claim rules.</summary>
    public required RuleBook Rules { get; init; }

    /// <summary>Origin of every shipped figure.</summary>
    public const string Origin = "shipped 1";

    /// <summary>Where the files lie beside the program.</summary>
    public static string DefaultFolder => Path.Combine(AppContext.BaseDirectory, "seed-data");

    /// <summary>Reads all files of a folder.</summary>
    /// <exception cref="SeedDataException">A file is missing or holds a fault; the message names file, line and column.</exception>
    public static SeedData Load(string folder) =>
        new(new PantryList(Ingredients(folder, _ => Origin)), LoadCatalogue(folder), LoadMeasures(folder)) { Rules = LoadRules(folder) };

    /// <summary>The ingredients of a folder; who holds a figure follows from how it became known.</summary>
    internal static List<Ingredient> Ingredients(string folder, Func<FigureStatus, string> origin)
    {
        var figures = ByKey(SeedTable.Read(folder, "figures.csv", t => (t.Required("key"), Figure(t, origin))));
        var allergens = ByKey(SeedTable.Read(folder, "allergens.csv", t => (t.Required("key"), Facts(t)))
            .SelectMany(row => row.Item2.Select(fact => (row.Item1, fact))));
        var pieces = ByKey(SeedTable.Read(
            folder, "pieces.csv", t => (t.Required("key"), new PieceWeight(t.Required("measure"), t.Number("grams"), t.Required("source")))));
        var aliases = ByKey(SeedTable.Read(folder, "aliases.csv", t => (t.Required("key"), (Alias: t.Required("alias"), Assumes: t.Text("assumes")))));

        var ingredients = SeedTable.Read(folder, "ingredients.csv", t =>
        {
            var key = t.Required("key");
            var kind = t.OneOf<IngredientKind>("kind");
            var basis = t.Required("basis");
            var own = figures[key].ToArray();
            var facts = allergens[key].ToArray();
            BuiltComposition built;
            try
            {
                built = CompositionBuilder.Build(kind, basis, own, SetOf(facts), Caveats(t));
            }
            catch (ArgumentException e)
            {
                throw t.Fault("key", $"{key} makes no composition: {e.Message}", e);
            }
            return new Ingredient
            {
                Id = new IngredientId(Guid.TryParseExact(t.Required("id"), "D", out var id) ? id : throw t.Fault("id", "not an id")),
                Key = key,
                Name = t.Required("name"),
                Kind = kind,
                Basis = basis,
                KeptAtCelsius = t.Number("kept_at_c"),
                Aliases = [.. aliases[key].Select(a => a.Alias)],
                AliasAssumptions = aliases[key].Where(a => a.Assumes.Length > 0)
                    .ToDictionary(a => a.Alias, a => a.Assumes, StringComparer.OrdinalIgnoreCase),
                AllergenFacts = facts,
                Figures = own,
                Pieces = [.. pieces[key]],
                Composition = built.Composition,
                Note = t.Text("note"),
            };
        });

        // A row of another file whose key no ingredient has would vanish without a word.
        var known = ingredients.Select(i => i.Key).ToHashSet(StringComparer.Ordinal);
        Stray("figures.csv", figures.Select(g => g.Key));
        Stray("allergens.csv", allergens.Select(g => g.Key));
        Stray("pieces.csv", pieces.Select(g => g.Key));
        Stray("aliases.csv", aliases.Select(g => g.Key));
        return ingredients;

        void Stray(string file, IEnumerable<string> keys)
        {
            if (keys.FirstOrDefault(k => !known.Contains(k)) is { } stray)
            {
                throw new SeedDataException($"{file}, column key: no ingredient is called {stray}.");
            }
        }
    }

    private static ILookup<string, T> ByKey<T>(IEnumerable<(string Key, T Value)> rows) => rows.ToLookup(r => r.Key, r => r.Value, StringComparer.Ordinal);

    private static IngredientFigure Figure(SeedTable t, Func<FigureStatus, string> origin)
    {
        var status = t.OneOf<FigureStatus>("status", upperCase: true);
        return new IngredientFigure(
            t.Required("quantity"), t.NumberOrNaN("value"), t.NumberOrNaN("low"), t.NumberOrNaN("high"), t.Required("source"), status, origin(status));
    }

    private static AllergenFact[] Facts(SeedTable t)
    {
        var state = t.Required("state") switch
        {
            "present" => AllergenState.Present,
            "unknown" => AllergenState.Unknown,
            var text => throw t.Fault("state", $"\"{text}\" is neither present nor unknown"),
        };
        // "any": nobody has read the label, so every allergen is an open question.
        Allergen[] which = t.Required("allergen") == "any" ? Enum.GetValues<Allergen>() : [t.OneOf<Allergen>("allergen")];
        return [.. which.Select(a => new AllergenFact(a, state, t.Required("law"), t.Required("source"), t.Text("note")))];
    }

    private static AllergenSet SetOf(IEnumerable<AllergenFact> facts) =>
        facts.Aggregate(default(AllergenSet), (set, fact) => set | default(AllergenSet).With(fact.Allergen, fact.State));

    private static CompositionCaveats Caveats(SeedTable t)
    {
        var caveats = CompositionCaveats.None;
        foreach (var flag in t.Text("flags").Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            caveats |= flag switch
            {
                "raw_egg" => CompositionCaveats.RawEgg,
                "carbonated" => CompositionCaveats.Carbonated,
                "stand_in" => CompositionCaveats.None,
                _ => throw t.Fault("flags", $"\"{flag}\" is none of raw_egg, carbonated, stand_in"),
            };
        }
        return caveats;
    }

    /// <summary>Methods, ices and glasses alone: all that a house needs which has taken its ingredients in.</summary>
    /// <exception cref="SeedDataException">A file is missing or holds a fault.</exception>
    public static BuildCatalogue LoadCatalogue(string folder) => new(
        SeedTable.Read(folder, "methods.csv", t => new MethodModel
        {
            Key = t.Required("key"),
            Name = t.Required("name"),
            Ice = t.Required("ice"),
            IceGramsPer100Millilitres = t.Number("ice_g_per_100ml"),
            VesselJoulesPerKelvin = t.Number("vessel_j_per_k"),
            VesselCelsius = t.Number("vessel_c"),
            AmbientJoules = t.Number("ambient_j"),
            ApproachKelvin = t.Number("approach_k"),
            CapAtStart = t.Flag("cap_at_start"),
            IceStaysIn = t.Flag("ice_stays_in"),
            InTheGlass = t.Flag("in_the_glass"),
            WeighIt = t.Flag("weigh_it"),
            DilutionUncertainty = t.NumberOr("dilution_u", 0),
            Source = t.Required("source"),
        }),
        SeedTable.Read(folder, "ice.csv", t => new IceForm(
            t.Required("key"), t.Required("name"), t.Number("celsius"), t.Number("surface_water_fraction"), t.Number("served_g_per_100ml"), t.Required("source"))),
        SeedTable.Read(folder, "glasses.csv", t => new Glass(
            t.Required("key"), t.Required("name"), t.Number("brim_ml"), t.Number("wash_line_ml"), t.Required("ice"), t.Required("source"))));

    /// <summary>The safety and claim rules alone, from the folder safety.</summary>
    /// <exception cref="SeedDataException">A file is missing or holds a fault.</exception>
    public static RuleBook LoadRules(string folder)
    {
        try
        {
            return RuleBook.Parse(file => File.ReadAllText(Path.Combine(folder, "safety", file)));
        }
        catch (FormatException e)
        {
            throw new SeedDataException($"safety: {e.Message}", e);
        }
        catch (IOException e)
        {
            throw new SeedDataException($"The safety rules cannot be read: {e.Message}", e);
        }
    }

    /// <summary>Measures set number 1 alone.</summary>
    /// <exception cref="SeedDataException">The file is missing or holds a fault.</exception>
    public static MeasuresSet LoadMeasures(string folder)
    {
        var set = SeedTable.Read(folder, "measures.csv", t => (Key: t.Required("key"), Value: t.Number("value"), Uncertainty: t.NumberOr("uncertainty", 0), Use: t.Required("use")))
            .Where(m => m.Use == "set")
            .ToDictionary(m => m.Key, StringComparer.Ordinal);
        return new MeasuresSet
        {
            Number = 1,
            FluidOunce = Of("fluid_ounce").Value,
            Teaspoon = Of("teaspoon").Value,
            Tablespoon = Of("tablespoon").Value,
            BarSpoon = Of("bar_spoon").Value,
            BarSpoonUncertainty = Of("bar_spoon").Uncertainty,
            Dash = Of("dash").Value,
            DashUncertainty = Of("dash").Uncertainty,
            ClaimDash = Of("claim_dash").Value,
            Drop = Of("drop").Value,
            DropUncertainty = Of("drop").Uncertainty,
            Mist = Of("mist").Value,
            MistUncertainty = Of("mist").Uncertainty,
            Cup = Of("cup").Value,
            Splash = Of("splash").Value,
            SplashUncertainty = Of("splash").Uncertainty,
            Float = Of("float").Value,
            FloatUncertainty = Of("float").Uncertainty,
            RinseKept = Of("rinse_kept").Value,
            RinseKeptUncertainty = Of("rinse_kept").Uncertainty,
            PinchGrams = Of("pinch_g").Value,
            PinchGramsUncertainty = Of("pinch_g").Uncertainty,
            WeightOunceGrams = Of("weight_ounce_g").Value,
        };

        (double Value, double Uncertainty) Of(string key) => set.TryGetValue(key, out var measure)
            ? (measure.Value, measure.Uncertainty)
            : throw new SeedDataException(string.Create(CultureInfo.InvariantCulture, $"measures.csv: the measure {key} is missing."));
    }
}
