using MenuLab.Core.Pantry;

namespace MenuLab.Core.Drafts;

/// <summary>A line of a working copy: a content that changes field by field, with an identity that does not.</summary>
public sealed class WorkingLine
{
    private WorkingLine(LineId id, int position, string text, string treatment)
    {
        Id = id;
        Position = position;
        Text = text;
        Treatment = treatment;
    }

    internal WorkingLine(LineId id, int position, LineContent content)
        : this(id, position, content.Text, content.Treatment) => Set(content);

    /// <summary>Identity.</summary>
    public LineId Id { get; private set; }

    /// <summary>Place from the top, from 1.</summary>
    public int Position { get; internal set; }

    /// <summary>The text as typed.</summary>
    public string Text { get; private set; }

    /// <summary>What it is; null for a line that is kept as typed.</summary>
    public IngredientId? Ingredient { get; private set; }

    /// <summary>The amount as typed.</summary>
    public double? Amount { get; private set; }

    /// <summary>Lower end where a range was typed.</summary>
    public double? AmountLow { get; private set; }

    /// <summary>Upper end where a range was typed.</summary>
    public double? AmountHigh { get; private set; }

    /// <summary>The unit as typed.</summary>
    public Unit Unit { get; private set; }

    /// <summary>mL understood.</summary>
    public double? Millilitres { get; private set; }

    /// <summary>g understood.</summary>
    public double? Grams { get; private set; }

    /// <summary>Standard uncertainty of the mass, g.</summary>
    public double GramsUncertainty { get; private set; }

    /// <summary>What was assumed.</summary>
    public IReadOnlyList<string> Assumptions { get; private set; } = [];

    /// <summary>Where it goes.</summary>
    public Place Place { get; private set; }

    /// <summary>When it joins.</summary>
    public Joins Joins { get; private set; }

    /// <summary>Temperature at which it starts, °C.</summary>
    public double? StartCelsius { get; private set; }

    /// <summary>What is done to it.</summary>
    public string Treatment { get; private set; }

    /// <summary>Its content as a value.</summary>
    public LineContent Content => new()
    {
        Text = Text,
        Ingredient = Ingredient,
        Amount = new TypedAmount(Amount, AmountLow, AmountHigh, Unit),
        Understood = new Understood(Millilitres, Grams, GramsUncertainty, Assumptions),
        Place = Place,
        Joins = Joins,
        StartCelsius = StartCelsius,
        Treatment = Treatment,
    };

    internal void Set(LineContent content)
    {
        Text = content.Text;
        Ingredient = content.Ingredient;
        Amount = content.Amount.Value;
        AmountLow = content.Amount.Low;
        AmountHigh = content.Amount.High;
        Unit = content.Amount.Unit;
        Millilitres = content.Understood.Millilitres;
        Grams = content.Understood.Grams;
        GramsUncertainty = content.Understood.GramsUncertainty;
        Assumptions = content.Understood.Assumptions;
        Place = content.Place;
        Joins = content.Joins;
        StartCelsius = content.StartCelsius;
        Treatment = content.Treatment;
    }

    /// <summary>The fields named take their values from the other content.</summary>
    internal static LineContent Merge(LineContent into, LineFields fields, LineContent from) => into with
    {
        Text = fields.HasFlag(LineFields.Text) ? from.Text : into.Text,
        Ingredient = fields.HasFlag(LineFields.Ingredient) ? from.Ingredient : into.Ingredient,
        Amount = fields.HasFlag(LineFields.Amount) ? from.Amount : into.Amount,
        Place = fields.HasFlag(LineFields.Place) ? from.Place : into.Place,
        Joins = fields.HasFlag(LineFields.Joins) ? from.Joins : into.Joins,
        StartCelsius = fields.HasFlag(LineFields.Start) ? from.StartCelsius : into.StartCelsius,
        Treatment = fields.HasFlag(LineFields.Treatment) ? from.Treatment : into.Treatment,
    };
}

/// <summary>The build of a working copy, changed field by field.</summary>
public sealed class WorkingBuild
{
    internal WorkingBuild()
    {
    }

    /// <summary>Key of the method.</summary>
    public string? Method { get; private set; }

    /// <summary>Seconds of the method.</summary>
    public double? Seconds { get; private set; }

    /// <summary>Key of the ice.</summary>
    public string? Ice { get; private set; }

    /// <summary>Key of the glass.</summary>
    public string? Glass { get; private set; }

    /// <summary>How it is strained.</summary>
    public string? Strain { get; private set; }

    /// <summary>Key of the ice in the served glass.</summary>
    public string? ServedOn { get; private set; }

    /// <summary>Steps in order.</summary>
    public IReadOnlyList<string> Steps { get; private set; } = [];

    /// <summary>The build as a value.</summary>
    public Build Value => new() { Method = Method, Seconds = Seconds, Ice = Ice, Glass = Glass, Strain = Strain, ServedOn = ServedOn, Steps = Steps };

    internal void Set(BuildFields fields, Build from)
    {
        Method = fields.HasFlag(BuildFields.Method) ? from.Method : Method;
        Seconds = fields.HasFlag(BuildFields.Seconds) ? from.Seconds : Seconds;
        Ice = fields.HasFlag(BuildFields.Ice) ? from.Ice : Ice;
        Glass = fields.HasFlag(BuildFields.Glass) ? from.Glass : Glass;
        Strain = fields.HasFlag(BuildFields.Strain) ? from.Strain : Strain;
        ServedOn = fields.HasFlag(BuildFields.ServedOn) ? from.ServedOn : ServedOn;
        Steps = fields.HasFlag(BuildFields.Steps) ? from.Steps : Steps;
    }
}
