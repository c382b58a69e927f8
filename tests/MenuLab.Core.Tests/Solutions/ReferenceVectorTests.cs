using MenuLab.TestKit.Solutions;

namespace MenuLab.Core.Tests.Solutions;

public sealed class ReferenceVectorTests
{
    public static TheoryData<string> Ids => [.. ReferenceVectors.All.Select(row => row.Text("id"))];

    [Fact]
    public void The_file_holds_116_rows_with_names_of_their_own() =>
        Assert.Equal(116, ReferenceVectors.All.Select(row => row.Text("id")).Distinct().Count());

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_code_gives_the_value_of_the_reference(string id)
    {
        var row = ReferenceVectors.Row(id);
        var actual = ReferenceVectors.Compute(row);
        Assert.InRange(actual, row.Number("expected") - row.Number("tolerance"), row.Number("expected") + row.Number("tolerance"));
        // The reference's own script prints five digits after the point; both sides then hold the same formulas.
        var model = row.Number("reference_model_value");
        Assert.InRange(actual, model - Math.Max(2e-5, 2e-6 * Math.Abs(model)), model + Math.Max(2e-5, 2e-6 * Math.Abs(model)));
    }
}
