using System.Globalization;
using MenuLab.Core.Drafts;
using MenuLab.Core.Drafts.Reading;
using MenuLab.Core.Pantry;

namespace MenuLab.TestKit.Reading;

/// <summary>How a reader does on the sheet of typed drinks.</summary>
/// <param name="Cases">Cases read.</param>
/// <param name="CasesRight">Cases with everything right: lines, questions, unread lines, build, notes, name, yield, account.</param>
/// <param name="Lines">Expected lines, questions and unread lines.</param>
/// <param name="LinesRight">Of them right by themselves.</param>
/// <param name="SilentlyWrong">Read as a line with another ingredient, amount or place than meant, without a question.</param>
/// <param name="Faults">What was wrong, a sentence each.</param>
public sealed record SheetScore(int Cases, int CasesRight, int Lines, int LinesRight, int SilentlyWrong, IReadOnlyList<string> Faults)
{
    public double ShareRight => Lines == 0 ? 0 : (double)LinesRight / Lines;

    /// <summary>Scores a reader against every case of a folder; the rules are those of the folder's README.</summary>
    public static SheetScore Run(DrinkReader reader, string folder)
    {
        var judges = SheetCase.ReadFolder(folder).Select(c => new CaseJudge(reader, c)).ToList();
        foreach (var judge in judges)
        {
            judge.Judge();
        }
        return new SheetScore(
            judges.Count, judges.Count(j => j.Faults.Count == 0), judges.Sum(j => j.Expected), judges.Sum(j => j.Right), judges.Sum(j => j.SilentlyWrong),
            [.. judges.SelectMany(j => j.Faults)]);
    }
}

/// <summary>Judges one case.</summary>
internal sealed class CaseJudge(DrinkReader reader, SheetCase sheet)
{
    private static readonly Dictionary<string, Unit> Units = new(StringComparer.Ordinal)
    {
        ["ml"] = Unit.Millilitre, ["cl"] = Unit.Centilitre, ["l"] = Unit.Litre, ["oz"] = Unit.FluidOunce, ["tsp"] = Unit.Teaspoon, ["tbsp"] = Unit.Tablespoon, ["barspoon"] = Unit.BarSpoon,
        ["dash"] = Unit.Dash, ["drop"] = Unit.Drop, ["mist"] = Unit.Mist, ["cup"] = Unit.Cup, ["g"] = Unit.Gram, ["kg"] = Unit.Kilogram, ["wtoz"] = Unit.WeightOunce, ["lb"] = Unit.Pound,
        ["part"] = Unit.Part, ["piece"] = Unit.Piece, ["leaf"] = Unit.Leaf, ["sprig"] = Unit.Sprig, ["slice"] = Unit.Slice, ["wedge"] = Unit.Wedge, ["peel"] = Unit.Peel, ["pinch"] = Unit.Pinch,
        ["cube"] = Unit.Cube, ["splash"] = Unit.Splash, ["float"] = Unit.Float, ["top"] = Unit.Top, ["rinse"] = Unit.Rinse, ["none"] = Unit.None,
    };

    private static readonly Dictionary<string, Place> Places = new(StringComparer.Ordinal)
    {
        ["in"] = Place.In, ["rinse"] = Place.Rinse, ["rim"] = Place.Rim, ["garnish"] = Place.Garnish, ["beside"] = Place.Beside,
    };

    private static readonly Dictionary<string, Joins> JoinWords = new(StringComparer.Ordinal)
    {
        ["mixed"] = Joins.Mixed, ["in_the_glass"] = Joins.InTheGlass, ["on_top"] = Joins.OnTop,
    };

    private readonly PantryList _pantry = reader.Vocabulary.Pantry;

    public List<string> Faults { get; } = [];

    public int Expected => sheet.Lines.Count + sheet.Pieces.Count;

    public int Right { get; private set; }

    public int SilentlyWrong { get; private set; }

    public void Judge()
    {
        var settings = new ReadSettings { BareNumber = sheet.OuncesHouse ? Unit.FluidOunce : Unit.Millilitre, PartsTotalMillilitres = sheet.PartsTotal };
        var text = string.Join('\n', sheet.Typed);
        var before = sheet.Before.Count > 0 ? reader.Read(string.Join('\n', sheet.Before), settings) : null;
        var drink = before is null ? reader.Read(text, settings) : reader.Edit(before, text, settings);
        JudgeLines(drink);
        JudgePieces(drink);
        JudgeBuild(drink.Build);
        JudgeRest(drink);
        JudgeAccount(drink);
    }

    private void Fault(string what) => Faults.Add($"{sheet.File} {sheet.Number}: {what}");

    // ---- lines ---------------------------------------------------------------------------------------------------

    private void JudgeLines(ReadDrink drink)
    {
        var free = drink.Lines.ToList();
        var at = 0;
        foreach (var expected in sheet.Lines)
        {
            var found = free.FindIndex(at, line => IsRight(expected, line));
            if (found >= 0)
            {
                Right++;
                free.RemoveAt(found);
                at = found;
                continue;
            }
            if (expected.MayBeAsked && drink.Questions.Any(q => Offers(q, expected.Key)))
            {
                Right++;
                continue;
            }
            var near = free.Find(line => Key(line.Ingredient) == expected.Key);
            Fault($"expected {expected.Amount} {expected.Unit} {expected.Key} {expected.Place} {expected.Joins} {string.Join(' ', expected.More)}; "
                + (near is not null ? $"read {Show(near)}" : Fate(drink, expected.Key)));
        }
        foreach (var line in free)
        {
            Fault($"read a line that nobody wrote so: {Show(line)}");
            // Another ingredient, amount or place than any expected line's; a wrong join or unit word alone is no silent error of that kind.
            if (!sheet.Lines.Any(e => Key(line.Ingredient) == e.Key && AmountIsRight(e, line) && PlaceIsRight(e, line)))
            {
                SilentlyWrong++;
            }
        }
    }

    private static string Fate(ReadDrink drink, string key) =>
        $"not among the {drink.Lines.Count} lines ({key}); asked: [{string.Join(" | ", drink.Questions.Select(q => q.Text + " -> " + q.Asks))}] unread: [{string.Join(" | ", drink.Unread.Select(u => u.Text + " -> " + u.Reason))}]"
        + $" notes: [{string.Join(" | ", drink.Notes)}]";

    private string Show(DraftLine line) => string.Create(CultureInfo.InvariantCulture,
        $"{line.Amount} {line.Unit} {Key(line.Ingredient)} {line.Place} {line.Joins} = {line.Millilitres:0.###} mL {line.Grams:0.###} g, starts {line.StartCelsius}, “{line.Treatment}”, from “{line.Text}”");

    private string Key(IngredientId id) => _pantry.Find(id)?.Key ?? "?";

    private bool IsRight(ExpectedLine expected, DraftLine line) =>
        Key(line.Ingredient) == expected.Key && AmountIsRight(expected, line) && UnitIsRight(expected, line) && PlaceIsRight(expected, line)
        && (line.Place != Place.In || expected.Joins is "*" or "-" || line.Joins == JoinWords[expected.Joins])
        && expected.More.All(more => MoreIsRight(more, line)) && line.Text.Length > 0;

    private static bool PlaceIsRight(ExpectedLine expected, DraftLine line) => expected.Place == "*" || line.Place == Places[expected.Place];

    private static bool AmountIsRight(ExpectedLine expected, DraftLine line)
    {
        if (expected.Amount == "*")
        {
            return true;
        }
        if (expected.Amount == "-")
        {
            return double.IsNaN(line.Amount) || line.Amount == 1;
        }
        if (expected.Amount.Split("..") is [var low, var high])
        {
            return Near(line.AmountLow, Number(low), 0.001) && Near(line.AmountHigh, Number(high), 0.001) && Near(line.Amount, (Number(low) + Number(high)) / 2, 0.001);
        }
        var amount = Number(expected.Amount);
        var slack = expected.More.Any(m => m is "scant" or "fat") ? 0.2 * amount : 0.001;
        return Near(line.Amount, amount, slack) || (amount == 1 && double.IsNaN(line.Amount) && IsCountable(expected.Unit));
    }

    private static bool IsCountable(string unit) => unit is "pinch" or "splash" or "float" or "peel" or "slice" or "wedge" or "sprig" or "leaf" or "dash" or "barspoon" or "drop" or "mist" or "cube" or "piece";

    private static bool UnitIsRight(ExpectedLine expected, DraftLine line) =>
        expected.Unit == "*" || line.Unit == Units[expected.Unit] || (expected.Amount == "-" && expected.Place != "in" && line.Unit == Unit.None);

    private static bool MoreIsRight(string more, DraftLine line)
    {
        var (name, value) = more.Split('=', 2) is [var n, var v] ? (n, v) : (more, "");
        return name switch
        {
            "ml" => Near(line.Millilitres, Number(value), 0.005 * Number(value)),
            "g" => Near(line.Grams, Number(value), 0.005 * Number(value)),
            "treat" => line.Treatment.Contains(value, StringComparison.OrdinalIgnoreCase),
            "start" => value switch
            {
                "freezer" => line.StartCelsius <= -10,
                "fridge" => line.StartCelsius is >= 0 and <= 8,
                "hot" => line.StartCelsius >= 60,
                _ => Near(line.StartCelsius, Number(value), 0.5),
            },
            "scant" => IsOff(line, -1),
            "fat" => IsOff(line, 1),
            "" => true,
            _ => throw new InvalidDataException($"\"{more}\" is no field of the sheet."),
        };
    }

    // The written figure is the middle of what was understood or an end of the amount, moved by 0.1 to 20 %.
    private static bool IsOff(DraftLine line, int way)
    {
        var written = line.Unit == Unit.FluidOunce ? line.Amount * 30 : line.Millilitres;
        var moved = way < 0 ? Math.Min(line.Millilitres / written, line.AmountLow / line.Amount) : Math.Max(line.Millilitres / written, line.AmountHigh / line.Amount);
        return way < 0 ? moved is >= 0.8 and <= 0.999 : moved is >= 1.001 and <= 1.2;
    }

    private static bool Near(double value, double expected, double slack) => Math.Abs(value - expected) <= slack + 1e-9;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    // ---- questions and unread lines --------------------------------------------------------------------------------

    private void JudgePieces(ReadDrink drink)
    {
        var questions = drink.Questions.ToList();
        var unread = drink.Unread.ToList();
        foreach (var expected in sheet.Pieces)
        {
            var asked = expected.MayBeAsked ? questions.FindIndex(q => Matches(q.Text, expected.Text) && expected.Keys.All(k => Offers(q, k))) : -1;
            if (asked >= 0)
            {
                Right++;
                questions.RemoveAt(asked);
                continue;
            }
            var left = expected.MayBeUnread ? unread.FindIndex(u => Matches(u.Text, expected.Text) && u.Reason.Length > 0) : -1;
            if (left >= 0)
            {
                Right++;
                unread.RemoveAt(left);
                continue;
            }
            Fault($"\"{expected.Text}\" should be {(expected.MayBeAsked ? $"asked ({string.Join(", ", expected.Keys)})" : "unread")}: "
                + $"asked [{string.Join(" | ", drink.Questions.Select(q => $"{q.Text}: {q.Asks} {string.Join(", ", q.Candidates.Select(c => c.Line is null ? c.Label : Key(c.Line.Ingredient)))}"))}] "
                + $"unread [{string.Join(" | ", drink.Unread.Select(u => u.Text))}] lines [{string.Join(" | ", drink.Lines.Select(l => l.Text))}] notes [{string.Join(" | ", drink.Notes)}]");
        }
        foreach (var question in questions.Where(q => !sheet.Lines.Any(e => e.MayBeAsked && Offers(q, e.Key))))
        {
            Fault($"asked for nothing: {question.Text}: {question.Asks}");
        }
        foreach (var line in unread)
        {
            Fault($"unread for nothing: {line.Text}: {line.Reason}");
        }
    }

    private static bool Matches(string text, string expected) =>
        text.Length > 0 && (text.Contains(expected, StringComparison.Ordinal) || expected.Contains(text, StringComparison.Ordinal));

    private bool Offers(LineQuestion question, string key) =>
        key == "new" ? question.Candidates.Any(c => c.Line is null) : question.Candidates.Any(c => c.Line is not null && Key(c.Line.Ingredient) == key);

    // ---- the rest --------------------------------------------------------------------------------------------------

    private void JudgeBuild(Build build)
    {
        foreach (var (field, value) in sheet.Build)
        {
            var inTheGlass = build.Method is "built" or "swizzled" or "crushed";
            var right = field switch
            {
                "method" => build.Method == value,
                "seconds" => value.Split("..") is [var low, var high]
                    ? build.Seconds >= Number(low) && build.Seconds <= Number(high)
                    : build.Seconds is { } seconds && Near(seconds, Number(value), 0.001),
                "ice" => build.Ice == value || (inTheGlass && build.ServedOn == value),
                "glass" => build.Glass == value,
                "strain" => build.Strain == value,
                "served_on" => build.ServedOn == value || (inTheGlass && build.Ice == value)
                    || (build.ServedOn is null && value == "none" && reader.Vocabulary.Catalogue.Glass(build.Glass) is { Ice: "none" }),
                _ => throw new InvalidDataException($"\"{field}\" is no field of a build."),
            };
            if (!right)
            {
                Fault($"build {field} should be {value}: read {build.Method}, {build.Seconds} s, ice {build.Ice}, glass {build.Glass}, {build.Strain}, on {build.ServedOn}; steps [{string.Join(" | ", build.Steps)}]");
            }
        }
    }

    private void JudgeRest(ReadDrink drink)
    {
        foreach (var note in sheet.Notes.Where(n => !drink.Notes.Concat(drink.Build.Steps).Concat(drink.Lines.Select(l => l.Treatment)).Any(t => t.Contains(n, StringComparison.OrdinalIgnoreCase))))
        {
            Fault($"\"{note}\" stands in no note: [{string.Join(" | ", drink.Notes)}] steps [{string.Join(" | ", drink.Build.Steps)}]");
        }
        if (sheet.Name is { } name && !string.Equals(drink.Name.Trim(' ', '-', '—', ':', '.', ','), name, StringComparison.OrdinalIgnoreCase))
        {
            Fault($"the name should be {name}: read \"{drink.Name}\"");
        }
        if (sheet.Yield is { } yield)
        {
            var words = yield.Split(' ');
            var right = words[1] == "ml"
                ? drink.Yield is { } volume && Near(volume.Millilitres, Number(words[0]), 0.005 * Number(words[0]))
                : drink.Yield is { } count && count.Drinks == Number(words[0]);
            if (!right)
            {
                Fault($"the yield should be {yield}: read {drink.Yield}");
            }
        }
    }

    private void JudgeAccount(ReadDrink drink)
    {
        for (var i = 0; i < sheet.Typed.Count; i++)
        {
            if (!string.IsNullOrWhiteSpace(sheet.Typed[i]) && !drink.Account.Any(a => a.Line == i + 1))
            {
                Fault($"line {i + 1} is lost: {sheet.Typed[i]}");
            }
        }
    }
}
