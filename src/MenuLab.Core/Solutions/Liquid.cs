namespace MenuLab.Core.Solutions;

/// <summary>
/// A view of a mixing state: one number per <see cref="Component"/>, in that component's unit. It lives on the stack;
/// nothing here knows of drinks.
/// </summary>
public readonly ref struct Liquid
{
    private readonly ReadOnlySpan<double> _parts;

    /// <summary>A view of a vector of <see cref="Components.Count"/> numbers.</summary>
    /// <exception cref="ArgumentException">The vector has another length.</exception>
    public Liquid(ReadOnlySpan<double> parts)
    {
        if (parts.Length != Components.Count)
        {
            throw new ArgumentException($"A liquid has {Components.Count} parts.", nameof(parts));
        }
        _parts = parts;
    }

    /// <summary>How much of a component there is, in its unit.</summary>
    public double this[Component component] => _parts[(int)component];

    /// <summary>The vector.</summary>
    public ReadOnlySpan<double> Parts => _parts;

    /// <summary>Total mass, g.</summary>
    public double Grams
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < Components.Count; i++)
            {
                sum += _parts[i] * Components.GramsPerUnit((Component)i);
            }
            return sum;
        }
    }
}
