namespace MenuLab.Core.Drafts.Reading;

/// <summary>
/// Collects the build from its words in the order typed. Ice belongs to the shaker until the text has reached the strain
/// or the glass, and to the glass from there on.
/// </summary>
internal sealed class BuildReader
{
    private enum Reached
    {
        Nothing,
        Method,
        Glass,
    }

    private readonly List<string> _steps = [];
    private Reached _reached;
    private string? _method;
    private double _seconds = double.NaN;
    private string? _ice;
    private string? _glass;
    private string? _strain;
    private string? _servedOn;
    private bool _noIce;

    /// <summary>Keys of methods beside the one that was kept.</summary>
    public List<string> OtherMethods { get; } = [];

    public void StartFrom(Build build)
    {
        _method = build.Method;
        _seconds = build.Seconds ?? double.NaN;
        _ice = build.Ice;
        _glass = build.Glass;
        _strain = build.Strain;
        _servedOn = build.ServedOn;
        _steps.AddRange(build.Steps);
    }

    /// <summary>For an edit: what is said now replaces what was.</summary>
    public void Replace(Clause clause)
    {
        if (clause.Build.Any(b => b.Meaning.Sense == Sense.Method))
        {
            _method = null;
        }
        if (clause.Build.Any(b => b.Meaning.Sense == Sense.Glass))
        {
            _glass = null;
            _reached = Reached.Glass;
        }
        if (clause.Build.Any(b => b.Meaning.Sense == Sense.Strain))
        {
            _strain = null;
        }
        Add(clause);
    }

    public void AddStep(string step)
    {
        if (step.Length > 0)
        {
            _steps.Add(step);
        }
    }

    public void Add(Clause clause)
    {
        foreach (var word in clause.Build)
        {
            var key = word.Meaning.Key;
            switch (word.Meaning.Sense)
            {
                case Sense.Method:
                    AddMethod(key);
                    break;
                case Sense.Strain:
                    _strain = key;
                    _reached = Reached.Glass;
                    break;
                case Sense.Glass:
                    _glass ??= key;
                    _reached = Reached.Glass;
                    break;
                case Sense.Up:
                    _servedOn = key;
                    break;
                case Sense.NoIce:
                    _servedOn = "none";
                    _noIce = true;
                    break;
                case Sense.Ice:
                    AddIce(word, clause.Build.Any(b => b.Meaning.Sense == Sense.Method));
                    break;
            }
        }
        if (!double.IsNaN(clause.Seconds) && (_method is not null || clause.Build.Any(b => b.Meaning.Sense == Sense.Method)))
        {
            _seconds = clause.Seconds;
        }
    }

    private void AddMethod(string key)
    {
        _reached = _reached == Reached.Nothing ? Reached.Method : _reached;
        _method = (_method, key) switch
        {
            (null, _) => key,
            // A dry shake is followed by one with ice, and the two together are one method.
            ("dry_shaken", "shaken") => "dry_shaken",
            ("shaken", "dry_shaken") => "reverse_dry_shaken",
            ("shaken", "reverse_dry_shaken") => "reverse_dry_shaken",
            _ => Kept(key),
        };

        string? Kept(string other)
        {
            if (other != _method)
            {
                OtherMethods.Add(other);
            }
            return _method;
        }
    }

    private void AddIce(BuildWord word, bool withMethod)
    {
        var key = word.Meaning.Key;
        if (_reached == Reached.Glass)
        {
            _servedOn = key.Length > 0 ? key : _servedOn ?? "cubes";
        }
        else if (word.IsOver && !withMethod)
        {
            _servedOn = key.Length > 0 ? key : "cubes";
        }
        else if (key.Length > 0)
        {
            _ice = key;
        }
    }

    public Build Done(BuildCatalogue catalogue)
    {
        // Without a method the ice can only be that of the glass.
        if (_method is null && _glass is not null && _ice is not null && _servedOn is null)
        {
            (_servedOn, _ice) = (_ice, null);
        }
        // Shaking over ice that is then served without is "up"; building without ice has none at all.
        if (_noIce && (catalogue.Method(_method)?.InTheGlass ?? false))
        {
            _ice = "none";
        }
        return new Build
        {
            Method = _method,
            Seconds = double.IsNaN(_seconds) ? null : _seconds,
            Ice = _ice,
            Glass = _glass,
            Strain = _strain,
            ServedOn = _servedOn,
            Steps = _steps,
        };
    }
}
