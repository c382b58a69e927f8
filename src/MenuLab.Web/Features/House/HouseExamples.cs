using MenuLab.Core.House;

namespace MenuLab.Web.Features.House;

/// <summary>What a setting does, shown on an example before it is saved.</summary>
public static class HouseExamples
{
    /// <summary>¾ ounce in the unit that stands first, the other one beside it.</summary>
    public static string Amount(HouseForm form)
    {
        const double ThreeQuarters = 0.75;
        var millilitres = form.Format.Amount(ThreeQuarters * form.OunceMillilitres) + " mL";
        var ounces = PourGrid.Fraction(ThreeQuarters) + " fl oz";
        return form.FirstUnit == FirstUnit.FluidOunces ? $"{ounces} · {millilitres}" : $"{millilitres} · {ounces}";
    }

    /// <summary>The first steps of the grid: "2.5, 5, 7.5, 10 mL …"; empty where the step cannot be read.</summary>
    public static string Steps(HouseForm form) => form.PourStepMillilitres is { } step && step > 0
        ? $"{string.Join(", ", Enumerable.Range(1, 4).Select(n => form.Format.Amount(n * step)))} mL …"
        : "";

    /// <summary>A number, and a range of two.</summary>
    public static string Number(HouseForm form) => $"{form.Format.Number(22.5, 1)}, likely {form.Format.Number(10.4, 1)}–{form.Format.Number(12, 1)}";

    /// <summary>A fridge and a freezer.</summary>
    public static string Temperature(HouseForm form) => $"fridge {form.Format.Degrees(4)}, freezer {form.Format.Degrees(-18)}";

    /// <summary>A cost in the currency; the code where it is not one yet.</summary>
    public static string Money(HouseForm form) => form.Format.Money(0.91, form.Currency.Trim().ToUpperInvariant());

    /// <summary>The clock on the wall and the bar's day; empty where zone or hour cannot be read.</summary>
    public static string Clock(HouseForm form, DateTimeOffset now)
    {
        if (form.Turn is not { } turn || Site.Of(new SiteId(Guid.Empty), "here", form.TimeZone, turn, "EUR", "EU") is not { IsOk: true, Value: var site })
        {
            return "";
        }
        return $"It is {HouseFormat.Time(TimeOnly.FromDateTime(site.ClockAt(now)))} there, and the bar's day is {form.Format.Day(site.DayOf(now))}.";
    }
}
