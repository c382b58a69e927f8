using MenuLab.Core.House;
using MenuLab.Core.Safety;
using MenuLab.Data.Seeding;

namespace MenuLab.Core.Tests.Safety;

/// <summary>The shipped rules, as a site in each place goes by them.</summary>
internal static class Rules
{
    public static RuleBook Book { get; } = SeedData.LoadRules(SeedData.DefaultFolder);

    public static SiteRules In(string site) => SiteRules.Of(Book, site, HouseFormat.Plain);

    public static SiteRules Us { get; } = In("US");

    /// <summary>The cautions of one rule.</summary>
    public static Caution? Of(this IReadOnlyList<Caution> cautions, string rule) => cautions.SingleOrDefault(c => c.Key == rule);
}
