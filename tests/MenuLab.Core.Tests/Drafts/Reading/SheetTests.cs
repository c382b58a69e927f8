using MenuLab.TestKit.Reading;

namespace MenuLab.Core.Tests.Reading;

public sealed class SheetTests
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "Drafts", "Reading", "Sheet");

    [Fact]
    public void The_sheet_is_read_at_least_95_percent_right_and_nothing_is_silently_wrong()
    {
        var score = SheetScore.Run(Reader.OfShipped, Folder);
        TestContext.Current.SendDiagnosticMessage($"{score.CasesRight} of {score.Cases} cases, {score.LinesRight} of {score.Lines} lines, {score.SilentlyWrong} silently wrong");
        var faults = string.Join('\n', score.Faults);
        Assert.True(score.Cases >= 120, $"Only {score.Cases} cases were found.");
        Assert.True(score.ShareRight >= 0.95, $"{score.LinesRight} of {score.Lines} lines are right.\n{faults}");
        Assert.True(score.SilentlyWrong == 0, $"{score.SilentlyWrong} lines are silently wrong.\n{faults}");
        // A case may fail on its build or notes while its lines are right.
        Assert.True(score.CasesRight >= 0.95 * score.Cases, $"{score.CasesRight} of {score.Cases} cases are right.\n{faults}");
    }

    [Fact]
    public void A_sheet_that_expects_another_drink_is_scored_wrong()
    {
        // The scoring must be able to fail: an expectation nobody would have counts as silently wrong.
        var folder = Directory.CreateTempSubdirectory().FullName;
        File.WriteAllText(Path.Combine(folder, "wrong.txt"), "== 001 | unit: ml\n> 45 ml apple juice\n> 20 ml lemon or lime\n= 45 | ml | honey | in | mixed\n! 20 ml lemon or lime\nb method=shaken\n");
        var score = SheetScore.Run(Reader.OfShipped, folder);
        Assert.Equal((1, 0, 2, 0, 1), (score.Cases, score.CasesRight, score.Lines, score.LinesRight, score.SilentlyWrong));
        Assert.True(score.Faults.Count >= 4, string.Join('\n', score.Faults));
        Directory.Delete(folder, recursive: true);
    }
}
