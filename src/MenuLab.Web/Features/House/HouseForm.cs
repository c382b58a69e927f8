using System.Globalization;
using MenuLab.Core;
using MenuLab.Core.House;
using MenuLab.Data.House;

namespace MenuLab.Web.Features.House;

/// <summary>What a house calls an ounce.</summary>
public enum Ounce
{
    /// <summary>30 mL, as jiggers are sold.</summary>
    AsTraded,
    /// <summary>29.5735 mL, as defined in the US.</summary>
    UnitedStates,
}

/// <summary>The form of the house's settings, as typed.</summary>
public sealed class HouseForm
{
    /// <summary>An ounce by US definition, mL (NIST Handbook 44, appendix C: 29.573 53 mL).</summary>
    public const double UsOunceMillilitres = 29.5735;

    /// <summary>The house's name.</summary>
    public string Name { get; set; } = "";

    /// <summary>The unit that stands first.</summary>
    public FirstUnit FirstUnit { get; set; }

    /// <summary>What an ounce is.</summary>
    public Ounce Ounce { get; set; }

    /// <summary>What jiggers step by, mL, as typed.</summary>
    public string PourStep { get; set; } = "";

    /// <summary>The decimal mark.</summary>
    public NumberPattern Numbers { get; set; }

    /// <summary>How a day is written.</summary>
    public DatePattern Dates { get; set; }

    /// <summary>The temperature scale.</summary>
    public TemperatureScale Temperatures { get; set; }

    /// <summary>The paper.</summary>
    public Paper Paper { get; set; }

    /// <summary>ISO 4217 code.</summary>
    public string Currency { get; set; } = "";

    /// <summary>Whose rules apply.</summary>
    public string Jurisdiction { get; set; } = "";

    /// <summary>IANA time zone.</summary>
    public string TimeZone { get; set; } = "";

    /// <summary>When the bar's day turns, as typed: "04:00".</summary>
    public string DayTurn { get; set; } = "";

    /// <summary>Version of the settings that this form was filled from.</summary>
    public int Seen { get; private init; }

    // Nothing prints a code yet (architecture 1.26), so the page does not ask for the address; what is there is kept.
    private string? PublicAddress { get; init; }

    /// <summary>The form as the settings stand.</summary>
    public static HouseForm Of(HouseBook book) => new()
    {
        Name = book.Settings.Name,
        FirstUnit = book.Settings.FirstUnit,
        Ounce = book.Stock.Measures.FluidOunce == PourGrid.TradeOunceMillilitres ? Ounce.AsTraded : Ounce.UnitedStates,
        PourStep = book.Format.Amount(book.Settings.PourStepMillilitres),
        Numbers = book.Settings.NumberPattern,
        Dates = book.Settings.DatePattern,
        Paper = book.Settings.Paper,
        Currency = book.Site.Currency,
        Jurisdiction = book.Site.Jurisdiction,
        TimeZone = book.Site.TimeZone,
        DayTurn = HouseFormat.Time(book.Site.DayTurn),
        Seen = book.Settings.Version,
        Temperatures = book.Settings.TemperatureScale,
        PublicAddress = book.Settings.PublicAddress,
    };

    /// <summary>How figures and days would be written.</summary>
    public HouseFormat Format => new(Numbers, Dates, Temperatures);

    /// <summary>What an ounce would hold, mL.</summary>
    public double OunceMillilitres => Ounce == Ounce.AsTraded ? PourGrid.TradeOunceMillilitres : UsOunceMillilitres;

    /// <summary>The pour step, mL; null where what was typed is none.</summary>
    public double? PourStepMillilitres => HouseParse.Number(PourStep) is { IsRead: true, Value: var step } ? step : null;

    /// <summary>When the day would turn; null where what was typed is no time.</summary>
    public TimeOnly? Turn => TimeOnly.TryParseExact(DayTurn.Trim(), ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;

    /// <summary>What was typed, or what cannot be read; the rules for the rest lie with the settings and the site.</summary>
    public Result<SettingsToSave> Read()
    {
        var problems = new List<Problem>();
        if (PourStepMillilitres is null)
        {
            problems.Add(new Problem(nameof(PourStep), HouseParse.Number(PourStep).Echo));
        }
        if (Turn is null)
        {
            problems.Add(new Problem(nameof(DayTurn), "Write a time like 04:00."));
        }
        if (problems.Count > 0)
        {
            return Result.Invalid<SettingsToSave>(problems);
        }
        var wish = new HouseWish
        {
            Name = Name, FirstUnit = FirstUnit, TemperatureScale = Temperatures, Paper = Paper, NumberPattern = Numbers, DatePattern = Dates,
            PourStepMillilitres = PourStepMillilitres!.Value, PublicAddress = PublicAddress,
        };
        return Result.Ok(new SettingsToSave(Seen, wish, OunceMillilitres, TimeZone, Turn!.Value, Currency.Trim().ToUpperInvariant(), Jurisdiction));
    }
}
