namespace MenuLab.Core.Preps;

/// <summary>What a step does to a pot, with the figures it rests on and how well they are known.</summary>
/// <param name="Apply">Changes a pot as the step does, with these figures; clamps where a moved figure leaves what is possible.</param>
/// <param name="Figures">The figures.</param>
/// <param name="Uncertainties">Their standard uncertainties; 0 for one that does not matter.</param>
internal sealed record StepModel(Action<Pot, double[]> Apply, double[] Figures, double[] Uncertainties)
{
    public static StepModel Nothing { get; } = new((_, _) => { }, [], []);
}

/// <summary>What the steps of a prep ask for, remark and refuse, as they are worked out.</summary>
internal sealed class PrepTalk
{
    public List<Ask> Asks { get; } = [];

    public List<PrepNote> Notes { get; } = [];

    public List<Problem> Problems { get; } = [];
}
