using System.Globalization;
using System.Text.RegularExpressions;
using MenuLab.Core.Drafts;
using MenuLab.Core.House;
using MenuLab.Core.Pantry;
using MenuLab.Core.Quantities;

namespace MenuLab.Data.Seeding;

/// <summary>
/// Reads a drink of the demo bar from a text file: name, id and brief on top, then a paragraph for each iteration, for what is on the bench now
/// and for how it was parked or dropped. The form is told in seed-data/README.md.
/// </summary>
internal sealed partial class DemoDrinkFile
{
    private readonly string _file;
    private readonly string[] _lines;
    private readonly IReadOnlyDictionary<string, PersonId> _people;
    private int _at;

    private DemoDrinkFile(string file, string[] lines, IReadOnlyDictionary<string, PersonId> people)
    {
        _file = file;
        _lines = lines;
        _people = people;
    }

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="people">People of the bar by name.</param>
    /// <exception cref="SeedDataException">It holds a fault; the message names file and line.</exception>
    public static DemoDrink Read(string path, IReadOnlyDictionary<string, PersonId> people) =>
        new DemoDrinkFile("drinks/" + Path.GetFileName(path), File.ReadAllLines(path), people).Drink();

    private DemoDrink Drink()
    {
        var name = Next("the name of the drink");
        var id = Value("id");
        if (!Guid.TryParseExact(id, "D", out var guid))
        {
            throw Fault($"\"{id}\" is not an id");
        }
        var started = Moment(Match(Started(), "started N days before at HH:MM, by NAME"));
        var (brief, due) = ReadBrief();

        var iterations = new List<DemoIteration>();
        DemoChange? now = null;
        DemoStanding? standing = null;
        var last = started;
        while (SkipToParagraph())
        {
            var heading = Match(Heading(), "iteration N [from N] | now | parked | dropped, N days before at HH:MM, by NAME");
            var moment = Moment(heading);
            if (moment.DaysBefore > last.DaysBefore || (moment.DaysBefore == last.DaysBefore && moment.Time < last.Time))
            {
                throw Fault("this is earlier than what stands above it");
            }
            last = moment;
            switch (heading.Groups["what"].Value)
            {
                case "now":
                    now = new DemoChange(Paragraph(), moment);
                    break;
                case "parked":
                    standing = new DemoStanding(Standing.Parked, Value("reason"), moment);
                    break;
                case "dropped":
                    standing = new DemoStanding(Standing.Dropped, Value("reason"), moment);
                    break;
                default:
                    iterations.Add(ReadIteration(heading, iterations.Count + 1, moment));
                    break;
            }
        }
        return new DemoDrink(new DraftId(guid), name, started, brief, due, iterations, now, standing);
    }

    private DemoIteration ReadIteration(Match heading, int expected, DemoMoment moment)
    {
        if (Number(heading, "number") != expected)
        {
            throw Fault($"this should be iteration {expected}");
        }
        var from = heading.Groups["from"].Success ? Number(heading, "from") : (int?)null;
        if (from < 1 || from >= expected)
        {
            throw Fault($"there is no iteration {from} above it");
        }
        var reason = Value("reason");
        return new DemoIteration(new DemoChange(Paragraph(), moment), from, reason);
    }

    private (Brief Brief, int? Due) ReadBrief()
    {
        var brief = Brief.Open;
        int? due = null;
        while (_at < _lines.Length && _lines[_at].Trim().Length > 0)
        {
            var line = Next("a line of the brief");
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var value = colon < 0 ? "" : line[(colon + 1)..].Trim();
            switch (colon < 0 ? "" : line[..colon])
            {
                case "slot":
                    brief = brief with { Slot = value };
                    break;
                case "claim":
                    brief = brief with { Claim = value };
                    break;
                case "flavour":
                    brief = brief with { Flavour = value };
                    break;
                case "equipment":
                    brief = brief with { Equipment = value };
                    break;
                case "cost limit":
                    brief = brief with { CostLimit = MoneyOf(value) };
                    break;
                case "price":
                    brief = brief with { Price = MoneyOf(value) };
                    break;
                case "avoid":
                    brief = brief with { Avoid = brief.Avoid.With(AllergenOf(value), AllergenState.Present) };
                    break;
                case "due in days":
                    due = int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var days) ? days : throw Fault($"\"{value}\" is not a number of days");
                    break;
                default:
                    throw Fault($"\"{line}\" is no line of a brief (slot, claim, flavour, equipment, cost limit, price, avoid, due in days)");
            }
        }
        return (brief, due);
    }

    private Money MoneyOf(string text) =>
        text.Split(' ') is [var amount, { Length: 3 } currency]
        && decimal.TryParse(amount, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && currency.All(char.IsAsciiLetterUpper)
            ? Money.Of(value, currency)
            : throw Fault($"\"{text}\" is no amount of money like \"1.20 EUR\"");

    private Allergen AllergenOf(string text) => Enum.TryParse<Allergen>(text, out var allergen) ? allergen : throw Fault($"\"{text}\" is no allergen");

    private DemoMoment Moment(Match match)
    {
        var name = match.Groups["by"].Value;
        var by = _people.TryGetValue(name, out var id) ? id : throw Fault($"nobody is called {name} in people.csv");
        var days = Number(match, "days");
        // What happened today might lie ahead of the hour at which the bar is made.
        return days < 1
            ? throw Fault("everything happened at least a day before")
            : new DemoMoment(days, TimeOnly.ParseExact(match.Groups["time"].Value, "HH:mm", CultureInfo.InvariantCulture), by);
    }

    private static int Number(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    private Match Match(Regex form, string what)
    {
        var match = form.Match(Next(what));
        return match.Success ? match : throw Fault($"this line should read: {what}");
    }

    private string Value(string key)
    {
        var line = Next($"the line \"{key}: ...\"");
        return line.StartsWith(key + ":", StringComparison.Ordinal) ? line[(key.Length + 1)..].Trim() : throw Fault($"this line should read: {key}: ...");
    }

    private string Next(string what) =>
        _at < _lines.Length && _lines[_at].Trim() is { Length: > 0 } line ? Taken(line) : throw Fault($"{what} is missing", _at + 1);

    private string Taken(string line)
    {
        _at++;
        return line;
    }

    private string Paragraph()
    {
        var from = _at;
        while (_at < _lines.Length && _lines[_at].Trim().Length > 0)
        {
            _at++;
        }
        return _at > from ? string.Join('\n', _lines[from.._at]) : throw Fault("the drink is missing", _at + 1);
    }

    private bool SkipToParagraph()
    {
        while (_at < _lines.Length && _lines[_at].Trim().Length == 0)
        {
            _at++;
        }
        return _at < _lines.Length;
    }

    private SeedDataException Fault(string what, int? line = null) => new(string.Create(CultureInfo.InvariantCulture, $"{_file}, line {line ?? _at}: {what}."));

    private const string When = "(?<days>[0-9]{1,4}) days? before at (?<time>([01][0-9]|2[0-3]):[0-5][0-9]), by (?<by>.+)$";

    [GeneratedRegex("^started " + When, RegexOptions.ExplicitCapture)]
    private static partial Regex Started();

    [GeneratedRegex("^(?<what>iteration (?<number>[0-9]{1,4})( from (?<from>[0-9]{1,4}))?|now|parked|dropped), " + When, RegexOptions.ExplicitCapture)]
    private static partial Regex Heading();
}
