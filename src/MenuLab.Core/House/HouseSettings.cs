namespace MenuLab.Core.House;

/// <summary>Which unit stands first for an amount.</summary>
public enum FirstUnit
{
    /// <summary>mL, with fl oz beside it.</summary>
    Millilitres,
    /// <summary>fl oz, with mL beside it.</summary>
    FluidOunces,
}

/// <summary>Which temperature scale stands first.</summary>
public enum TemperatureScale
{
    /// <summary>°C.</summary>
    Celsius,
    /// <summary>°F.</summary>
    Fahrenheit,
}

/// <summary>Which sheet the house prints on.</summary>
public enum Paper
{
    /// <summary>210 × 297 mm.</summary>
    A4,
    /// <summary>8.5 × 11 in.</summary>
    Letter,
}

/// <summary>How the house writes and measures: one row (architecture 1.19). Money and law belong to the site.</summary>
public sealed class HouseSettings
{
    /// <summary>Most characters in the house's name.</summary>
    public const int NameMaxLength = 80;

    /// <summary>Most characters in the public address.</summary>
    public const int AddressMaxLength = 200;

    /// <summary>What a jigger steps by unless the house says otherwise, mL (common practice, no source).</summary>
    public const double UsualPourStepMillilitres = 2.5;

    /// <summary>Finest and coarsest pour step, mL: below the first nobody can pour, above the second no drink is left.</summary>
    public const double FinestPourStepMillilitres = 0.5, CoarsestPourStepMillilitres = 30;

    /// <summary>The settings of a house that has not chosen yet.</summary>
    public HouseSettings()
    {
    }

    /// <summary>There is one row; its key is 1.</summary>
    public int Id { get; private set; } = 1;

    /// <summary>The house's name; empty until given.</summary>
    public string Name { get; private set; } = "";

    /// <summary>The unit that stands first, and that a bare number is read in.</summary>
    public FirstUnit FirstUnit { get; private set; }

    /// <summary>The temperature scale that stands first.</summary>
    public TemperatureScale TemperatureScale { get; private set; }

    /// <summary>The paper.</summary>
    public Paper Paper { get; private set; }

    /// <summary>The decimal mark.</summary>
    public NumberPattern NumberPattern { get; private set; }

    /// <summary>How a day is written.</summary>
    public DatePattern DatePattern { get; private set; }

    /// <summary>What the house's jiggers step by, mL.</summary>
    public double PourStepMillilitres { get; private set; } = UsualPourStepMillilitres;

    /// <summary>The measures set in use; saved iterations keep the one that they were read with.</summary>
    public int MeasuresSet { get; private set; } = 1;

    /// <summary>Where guests reach the house; null until set, and until then no code is printed (architecture 1.26).</summary>
    public string? PublicAddress { get; private set; }

    /// <summary>The edition of the shipped ingredients that this database last took in; 0 before the first.</summary>
    public int ShippedEdition { get; private set; }

    /// <summary>The latest instant that this database has seen; a clock that stands before it was set back (architecture 1.18).</summary>
    public DateTimeOffset? LastInstant { get; private set; }

    /// <summary>Raised by every change.</summary>
    public int Version { get; private set; }

    /// <summary>How the house writes figures and days.</summary>
    public HouseFormat Format => new(NumberPattern, DatePattern, TemperatureScale);

    /// <summary>Changes how the house writes and pours.</summary>
    /// <returns>These settings, or all that is wrong; then nothing has changed.</returns>
    public Result<HouseSettings> Change(HouseWish wish)
    {
        var problems = new List<Problem>();
        var trimmed = OneLine.Check(wish.Name, 0, NameMaxLength, nameof(Name), "a name", problems);
        var address = string.IsNullOrWhiteSpace(wish.PublicAddress) ? null : wish.PublicAddress.Trim();
        if (address is not null && (address.Length > AddressMaxLength || !Uri.TryCreate(address, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https")))
        {
            problems.Add(new Problem(nameof(PublicAddress), "Give a whole address, beginning with https:// or http://."));
        }
        if (!(wish.PourStepMillilitres >= FinestPourStepMillilitres && wish.PourStepMillilitres <= CoarsestPourStepMillilitres))
        {
            problems.Add(new Problem(nameof(PourStepMillilitres), "A pour step is 0.5 to 30 mL; jiggers are marked in steps of 2.5."));
        }
        if (problems.Count > 0)
        {
            return Result.Invalid<HouseSettings>(problems);
        }
        Name = trimmed;
        FirstUnit = wish.FirstUnit;
        TemperatureScale = wish.TemperatureScale;
        Paper = wish.Paper;
        NumberPattern = wish.NumberPattern;
        DatePattern = wish.DatePattern;
        PourStepMillilitres = wish.PourStepMillilitres;
        PublicAddress = address;
        Version++;
        return Result.Ok(this);
    }

    /// <summary>Uses another measures set from now on.</summary>
    public void UseMeasures(int number)
    {
        MeasuresSet = number;
        Version++;
    }

    /// <summary>An edition of the shipped ingredients was taken in.</summary>
    public void TookIn(int edition)
    {
        ShippedEdition = edition;
        Version++;
    }

    /// <summary>Notes the time.</summary>
    /// <returns>How far the clock stands behind the latest instant seen; zero when it does not.</returns>
    public TimeSpan Saw(DateTimeOffset now)
    {
        if (LastInstant is { } last && now < last)
        {
            return last - now;
        }
        LastInstant = now;
        return TimeSpan.Zero;
    }
}

/// <summary>How a house would like to write and pour.</summary>
public sealed record HouseWish
{
    /// <summary>The house's name; may be empty.</summary>
    public string? Name { get; init; }

    /// <summary>The unit that stands first.</summary>
    public FirstUnit FirstUnit { get; init; }

    /// <summary>The temperature scale that stands first.</summary>
    public TemperatureScale TemperatureScale { get; init; }

    /// <summary>The paper.</summary>
    public Paper Paper { get; init; }

    /// <summary>The decimal mark.</summary>
    public NumberPattern NumberPattern { get; init; }

    /// <summary>How a day is written.</summary>
    public DatePattern DatePattern { get; init; }

    /// <summary>What the house's jiggers step by, mL.</summary>
    public double PourStepMillilitres { get; init; } = HouseSettings.UsualPourStepMillilitres;

    /// <summary>Where guests reach the house; empty for none.</summary>
    public string? PublicAddress { get; init; }
}
