using MenuLab.Core.House;

namespace MenuLab.Core.Tests.House;

public class SiteAndPersonTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 3, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_site_tells_all_that_is_wrong_at_once() =>
        Assert.Equal(
            ["Name", "TimeZone", "Currency", "Jurisdiction"],
            Site.Of(SiteId.New(), "", "Harbour/Nowhere", Site.UsualDayTurn, "eur", "E U").Problems.Select(p => p.Field));

    [Fact]
    public void A_site_takes_an_IANA_zone_and_not_a_name_of_another_system()
    {
        Assert.True(Site.Of(SiteId.New(), "Harbour", "Europe/Lisbon", Site.UsualDayTurn, "EUR", "EU").IsOk);
        Assert.False(Site.Of(SiteId.New(), "Harbour", "GMT Standard Time", Site.UsualDayTurn, "EUR", "EU").IsOk);
    }

    [Fact]
    public void Erasing_a_person_empties_the_details_and_keeps_the_id_and_the_first_instant()
    {
        var person = Person.Of(PersonId.New(), "Mira Holm", "MH", PersonKind.Staff).Value;
        var id = person.Id;
        person.Erase(Noon);
        person.Erase(Noon.AddDays(1));
        Assert.Equal((id, "", "", Noon), (person.Id, person.Name, person.Initials, person.ErasedAt));
    }

    [Fact]
    public void A_clock_set_back_is_noticed_and_never_moves_the_latest_instant()
    {
        var settings = new HouseSettings();
        Assert.Equal(TimeSpan.Zero, settings.Saw(Noon));
        Assert.Equal(TimeSpan.FromHours(2), settings.Saw(Noon.AddHours(-2)));
        Assert.Equal(Noon, settings.LastInstant);
    }

    [Theory]
    [InlineData("harbour.example", false)]
    [InlineData("ftp://harbour.example", false)]
    [InlineData("https://harbour.example", true)]
    [InlineData(" ", true)]
    public void A_public_address_is_whole_or_not_set(string address, bool ok) =>
        Assert.Equal(ok, new HouseSettings().Change(new HouseWish { PublicAddress = address }).IsOk);

    [Fact]
    public void A_measures_set_reads_back_from_its_row()
    {
        var measures = new MeasuresSet { Number = 3, Dash = 0.9, FluidOunce = 29.5735 };
        Assert.Equal(measures, NumberedSet.Of(measures, null, Noon).Measures());
    }
}
