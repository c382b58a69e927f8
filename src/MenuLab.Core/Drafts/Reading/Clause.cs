namespace MenuLab.Core.Drafts.Reading;

/// <summary>How a clause hangs on the one before it.</summary>
internal enum Link
{
    /// <summary>It opens the source line.</summary>
    First,
    /// <summary>A comma, a stop, a dash, a bracket, an ornament.</summary>
    Soft,
    /// <summary>A slash.</summary>
    Slash,
    /// <summary>A semicolon, a plus, a bar.</summary>
    Hard,
    /// <summary>"And", "with", or nothing but the next amount.</summary>
    Run,
    /// <summary>A colon.</summary>
    Colon,
}

/// <summary>A build word where it stands.</summary>
internal readonly record struct BuildWord(Meaning Meaning, int At, int End, bool IsOver);

/// <summary>
/// A stretch of a source line that speaks of one thing: an amount and its ingredient, a step, a label. What its words
/// said, sorted; what none of the tables knew stands among the name's words.
/// </summary>
internal sealed class Clause
{
    public required int From { get; init; }

    public int To { get; set; }

    public required Link Link { get; init; }

    public bool InBrackets { get; init; }

    public Amount? Amount { get; set; }

    public Unit? Unit { get; set; }

    /// <summary>Token of the unit, or -1.</summary>
    public int UnitAt { get; set; } = -1;

    /// <summary>The unit was a lone T among capitals: either spoon.</summary>
    public bool EitherSpoon { get; set; }

    /// <summary>The same amount again, in another unit.</summary>
    public (Amount Amount, Unit? Unit)? Again { get; set; }

    /// <summary>"2 x 15 ml": pieces times amount; NaN where nothing was multiplied.</summary>
    public double Times { get; set; } = double.NaN;

    /// <summary>Tokens of the name, those that no table knew among them.</summary>
    public List<int> Name { get; } = [];

    /// <summary>Some word of the name belongs to no known name.</summary>
    public bool HasStrangers { get; set; }

    /// <summary>Token of an "or" between two names, or -1.</summary>
    public int OrAt { get; set; } = -1;

    public List<string> Treatments { get; } = [];

    /// <summary>Tokens of the treatments, which may turn out to belong to a name.</summary>
    public List<int> TreatmentTokens { get; } = [];

    public List<double> Strengths { get; } = [];

    public double StartCelsius { get; set; } = double.NaN;

    /// <summary>Said as a figure ("at 85 °C"), so it is no assumption.</summary>
    public bool StartIsFigure { get; set; }

    public List<BuildWord> Build { get; } = [];

    public double Seconds { get; set; } = double.NaN;

    public HashSet<Sense> Said { get; } = [];

    public double[]? Ratio { get; set; }

    /// <summary>The text ends in a question mark.</summary>
    public bool IsDoubtful { get; set; }

    public string Trouble { get; set; } = "";

    public int TroubleAt { get; set; }

    /// <summary>Put together from two clauses, so that the name's words may stand in another order.</summary>
    public bool IsJoined { get; private set; }

    /// <summary>What the name was found to mean; forgotten when the name grows.</summary>
    public Vocabulary.Match? Found { get; set; }

    public bool HasAmount => Amount is not null;

    public bool HasName => Name.Count > 0;

    public bool HasBuild => Build.Count > 0;

    public bool Says(Sense sense) => Said.Contains(sense);

    /// <summary>Nothing but a figure and its unit.</summary>
    public bool IsBareAmount => HasAmount && !HasName && !HasBuild && Ratio is null && Trouble.Length == 0 && !SaysPlace && Said.All(s => s is Sense.Filler or Sense.About or Sense.Scant or Sense.Fat or Sense.With or Sense.And);

    public bool SaysPlace => Says(Sense.Garnish) || Says(Sense.Rim) || Says(Sense.OnTheRim) || Says(Sense.Rinse) || Says(Sense.Beside) || Says(Sense.Top) || Says(Sense.Float) || Says(Sense.OnTop)
        || Says(Sense.InTheGlass);

    /// <summary>Takes over what a following clause says of the same thing.</summary>
    public void Absorb(Clause other)
    {
        To = other.To;
        Found = null;
        IsJoined |= HasName && other.HasName;
        if (!HasAmount && other.HasAmount)
        {
            Amount = other.Amount;
            Unit = other.Unit ?? Unit;
            UnitAt = other.Unit is null ? UnitAt : other.UnitAt;
            EitherSpoon = other.EitherSpoon;
        }
        else if (other.HasAmount)
        {
            Again = (other.Amount!.Value, other.Unit);
        }
        else if (Unit is null && other.Unit is not null)
        {
            Unit = other.Unit;
            UnitAt = other.UnitAt;
        }
        Name.AddRange(other.Name);
        HasStrangers |= other.HasStrangers;
        OrAt = OrAt < 0 ? other.OrAt : OrAt;
        Treatments.AddRange(other.Treatments);
        TreatmentTokens.AddRange(other.TreatmentTokens);
        Strengths.AddRange(other.Strengths);
        if (double.IsNaN(StartCelsius))
        {
            StartCelsius = other.StartCelsius;
            StartIsFigure = other.StartIsFigure;
        }
        Build.AddRange(other.Build);
        if (double.IsNaN(Seconds))
        {
            Seconds = other.Seconds;
        }
        Said.UnionWith(other.Said);
        IsDoubtful |= other.IsDoubtful;
    }
}
