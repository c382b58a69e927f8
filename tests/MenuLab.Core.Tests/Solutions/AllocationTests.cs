using MenuLab.TestKit.Solutions;
using MenuLab.Core.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class AllocationTests
{
    [Fact]
    public void The_paths_a_balance_runs_through_allocate_nothing()
    {
        var drink = State.WorkedDrink();
        var partial = new double[Components.Count];
        var forms = new double[LinearForms.Count];
        var perAcid = new double[Components.AcidCount];
        var settings = new IceSettings(200, -1, 0.02, 49, 22, 500, 0.3, CapAtStart: false);

        // Twice, so that static tables and the compiler's first-call work are done before counting.
        Run();
        Run();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            Run();
        }
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Run()
        {
            var liquid = new Liquid(drink);
            var acids = drink.AsSpan((int)Components.FirstAcid, Components.AcidCount);
            Density.Millilitres(liquid, partial);
            LinearForms.Of(drink, forms);
            var ph = AcidBase.Solve(acids, 0.001);
            AcidBase.Sensitivity(acids, 0.001, ph, perAcid, out _);
            Freezing.PointCelsius(liquid);
            Ice.HeatBalance(liquid, 22, settings, Ice.Chill(liquid, 22, settings).MeltedGrams);
            Viscosity.MilliPascalSeconds(liquid, 4);
            WaterActivity.Of(liquid);
            Refractometer.ExpectedReading(liquid);
            Carbonation.Volumes(2, 4);
        }
    }
}
