namespace MenuLab.Core.Statistics;

/// <summary>
/// Least squares on the columns of a design. A column that follows from those before it is set aside with coefficient zero,
/// so factors may be given by all their indicator columns.
/// </summary>
/// <remarks>
/// Source: Gram-Schmidt, each column freed from the earlier ones twice (once is not enough when columns nearly agree; "twice is enough",
/// Giraud and Langou 2005, MEMORY). Error: rounding only; a column counts as following when less than 1e-9 of its length is its own.
/// </remarks>
internal sealed class LeastSquares
{
    private const double Follows = 1e-9;

    private readonly List<double[]> _directions = [];
    private readonly List<int> _kept = [];
    private readonly double[,] _triangle;
    private readonly double[,] _inverse;

    /// <param name="columns">The columns, each as long as <paramref name="values"/>.</param>
    /// <param name="values">What is to be explained.</param>
    public LeastSquares(IReadOnlyList<double[]> columns, double[] values)
    {
        _triangle = new double[columns.Count, columns.Count];
        for (var c = 0; c < columns.Count; c++)
        {
            Keep(columns[c], c);
        }
        Residuals = (double[])values.Clone();
        var along = _directions.ConvertAll(direction => TakeOut(direction, Residuals));
        for (var d = 0; d < _directions.Count; d++)
        {
            along[d] += TakeOut(_directions[d], Residuals);
        }
        SumOfSquares = Dot(values, values);
        ResidualSumOfSquares = TwoWayAnalysis.Sums.Rounded(Dot(Residuals, Residuals), SumOfSquares);
        Degrees = values.Length - Rank;
        _inverse = InverseOfTriangle();
        Coefficients = new double[columns.Count];
        for (var i = 0; i < Rank; i++)
        {
            for (var j = i; j < Rank; j++)
            {
                Coefficients[_kept[i]] += _inverse[i, j] * along[j];
            }
        }
    }

    public int Rank => _kept.Count;

    /// <summary>Degrees of freedom of the residual.</summary>
    public int Degrees { get; }

    /// <summary>One a column; zero for a column that follows from others.</summary>
    public double[] Coefficients { get; }

    public double[] Residuals { get; }

    /// <summary>Of the values themselves.</summary>
    public double SumOfSquares { get; }

    /// <summary>Zero where nothing but rounding is left.</summary>
    public double ResidualSumOfSquares { get; }

    public double MeanSquare => ResidualSumOfSquares / Degrees;

    /// <summary>Whether a column has a coefficient of its own; false where it follows from those before it.</summary>
    public bool Has(int column) => _kept.Contains(column);

    /// <summary>How much each value pulls its own fit, 0 to 1.</summary>
    public double[] Leverages()
    {
        var leverages = new double[Residuals.Length];
        foreach (var direction in _directions)
        {
            for (var i = 0; i < leverages.Length; i++)
            {
                leverages[i] += direction[i] * direction[i];
            }
        }
        return leverages;
    }

    /// <summary>Sum of squared errors when each value is foretold without itself.</summary>
    public double Press()
    {
        var leverages = Leverages();
        var press = 0.0;
        for (var i = 0; i < leverages.Length; i++)
        {
            var error = Residuals[i] / (1 - leverages[i]);
            press += error * error;
        }
        return press;
    }

    /// <summary>Variance of a combination of coefficients, over the residual variance.</summary>
    public double Variance(ReadOnlySpan<double> combination) => Covariance(combination, combination);

    /// <summary>Covariance of two combinations of coefficients, over the residual variance.</summary>
    public double Covariance(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sum = 0.0;
        for (var j = 0; j < Rank; j++)
        {
            var (l, r) = (0.0, 0.0);
            for (var i = 0; i <= j; i++)
            {
                l += left[_kept[i]] * _inverse[i, j];
                r += right[_kept[i]] * _inverse[i, j];
            }
            sum += l * r;
        }
        return sum;
    }

    /// <summary>A combination that picks one coefficient.</summary>
    public double[] Only(int column)
    {
        var combination = new double[Coefficients.Length];
        combination[column] = 1;
        return combination;
    }

    /// <summary>Indicator columns of a factor.</summary>
    /// <param name="levels">The level of each value, 0 to <paramref name="count"/> - 1.</param>
    /// <param name="count">How many levels.</param>
    public static List<double[]> Indicators(IReadOnlyList<int> levels, int count)
    {
        var columns = Enumerable.Range(0, count).Select(_ => new double[levels.Count]).ToList();
        for (var i = 0; i < levels.Count; i++)
        {
            columns[levels[i]][i] = 1;
        }
        return columns;
    }

    private void Keep(double[] column, int index)
    {
        var own = (double[])column.Clone();
        var length = Math.Sqrt(Dot(own, own));
        var place = _kept.Count;
        for (var d = 0; d < place; d++)
        {
            _triangle[d, place] = TakeOut(_directions[d], own);
        }
        for (var d = 0; d < place; d++)
        {
            _triangle[d, place] += TakeOut(_directions[d], own);
        }
        var rest = Math.Sqrt(Dot(own, own));
        if (!(rest > Follows * length))
        {
            return;
        }
        _triangle[place, place] = rest;
        for (var i = 0; i < own.Length; i++)
        {
            own[i] /= rest;
        }
        _directions.Add(own);
        _kept.Add(index);
    }

    private static double TakeOut(double[] direction, double[] values)
    {
        var along = Dot(direction, values);
        for (var i = 0; i < values.Length; i++)
        {
            values[i] -= along * direction[i];
        }
        return along;
    }

    private double[,] InverseOfTriangle()
    {
        var inverse = new double[Rank, Rank];
        for (var j = 0; j < Rank; j++)
        {
            inverse[j, j] = 1 / _triangle[j, j];
            for (var i = j - 1; i >= 0; i--)
            {
                var sum = 0.0;
                for (var k = i + 1; k <= j; k++)
                {
                    sum += _triangle[i, k] * inverse[k, j];
                }
                inverse[i, j] = -sum / _triangle[i, i];
            }
        }
        return inverse;
    }

    private static double Dot(double[] left, double[] right)
    {
        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += left[i] * right[i];
        }
        return sum;
    }
}
