using CsCheck;
using MenuLab.Core.Solutions;
using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class LinearFormsTests
{
    [Fact]
    public void Forms_are_the_weighted_sums_of_the_parts() =>
        State.Drinks.Sample(drink =>
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(drink, forms);
            return forms.Select((value, f) =>
            {
                var sum = 0.0;
                for (var c = 0; c < drink.Length; c++)
                {
                    sum += drink[c] * LinearForms.Weight((LinearForm)f, (Component)c);
                }
                return Math.Abs(value - sum) <= 1e-12 * Math.Max(1, Math.Abs(sum));
            }).All(same => same);
        }, iter: 1000);

    [Fact]
    public void Forms_of_a_mixture_are_the_sums_of_the_forms() =>
        Gen.Select(State.Drinks, State.Drinks).Sample((a, b) =>
        {
            var (ofA, ofB, ofBoth) = (new double[LinearForms.Count], new double[LinearForms.Count], new double[LinearForms.Count]);
            LinearForms.Of(a, ofA);
            LinearForms.Of(b, ofB);
            LinearForms.Of(State.Sum(a, b), ofBoth);
            return ofBoth.Select((value, f) => Math.Abs(value - ofA[f] - ofB[f]) <= 1e-12 * Math.Max(1, Math.Abs(value))).All(same => same);
        }, iter: 1000);

    [Fact]
    public void Grams_are_the_mass_of_the_liquid() =>
        State.Drinks.Sample(drink =>
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(drink, forms);
            return Math.Abs(forms[(int)LinearForm.Grams] - new Liquid(drink).Grams) < 1e-10;
        }, iter: 500);

    [Fact] // every sugar counts once in the sugars and once under its own name, every counted acid once under its own or among the others
    public void Sugars_and_acids_add_up_from_their_kinds() =>
        State.Drinks.Sample(drink =>
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(drink, forms);
            var sugars = forms[(int)LinearForm.SucroseGrams..((int)LinearForm.SugarNotToldApartGrams + 1)].Sum();
            var acids = forms[(int)LinearForm.CitricGrams..((int)LinearForm.OtherAcidGrams + 1)].Sum();
            var acidMass = 0.0;
            for (var acid = Components.FirstAcid; acid < Components.LastAcid; acid++)
            {
                acidMass += drink[(int)acid] * Components.GramsPerUnit(acid);
            }
            var solids = forms[(int)LinearForm.SugarGrams] + forms[(int)LinearForm.PolyolGrams] + acids - forms[(int)LinearForm.AceticGrams]
                         + forms[(int)LinearForm.SaltGrams] + drink[(int)Component.OtherCarbohydrate] + drink[(int)Component.OtherSolids];
            return Math.Abs(sugars - forms[(int)LinearForm.SugarGrams]) < 1e-10
                   && Math.Abs(acids - acidMass) < 1e-10
                   && Math.Abs(solids - forms[(int)LinearForm.SolubleSolidsGrams]) < 1e-10;
        }, iter: 1000);

    [Fact]
    public void Acid_equivalents_of_a_litre_are_its_titratable_acidity() =>
        State.Drinks.Sample(drink =>
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(drink, forms);
            var acids = drink[(int)Components.FirstAcid..((int)Components.LastAcid + 1)];
            // Water's own ions at pH 8.1 are the difference, 1.27e-6 eq/L.
            var titrated = AcidBase.TitratableEquivalentsPerLitre(acids, drink[(int)Component.Charge]);
            return Math.Abs(titrated - forms[(int)LinearForm.AcidEquivalents] - 1.2656e-6) < 1e-9;
        }, iter: 1000);

    [Fact]
    public void The_soluble_solids_form_agrees_with_the_refractometer() =>
        State.Drinks.Sample(drink =>
        {
            var forms = new double[LinearForms.Count];
            LinearForms.Of(drink, forms);
            return Math.Abs(Refractometer.SolubleSolidsPercent(new Liquid(drink)) - 100 * forms[(int)LinearForm.SolubleSolidsGrams] / forms[(int)LinearForm.Grams]) < 1e-10;
        }, iter: 500);

    [Fact]
    public void Spans_of_the_wrong_length_and_unknown_forms_are_refused()
    {
        Assert.Throws<ArgumentException>(() => LinearForms.Of(new double[3], new double[LinearForms.Count]));
        Assert.Throws<ArgumentException>(() => LinearForms.Of(new double[Components.Count], new double[3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearForms.Weight((LinearForm)99, Component.Water));
    }
}
