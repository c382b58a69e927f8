namespace MenuLab.Core;

/// <summary>Something that the user can put right: where it is and what to do about it.</summary>
/// <param name="Field">The field or place concerned, as a caller knows it.</param>
/// <param name="Message">One sentence: what is wrong and how to mend it.</param>
public readonly record struct Problem(string Field, string Message);

/// <summary>A value, or the problems that stand in its way, all of them at once.</summary>
/// <typeparam name="T">What the value is.</typeparam>
public sealed class Result<T>
{
    private readonly T? _value;

    internal Result(T? value, IReadOnlyList<Problem> problems)
    {
        _value = value;
        Problems = problems;
    }

    /// <summary>Nothing stands in the way.</summary>
    public bool IsOk => Problems.Count == 0;

    /// <summary>What stands in the way; empty when there is a value.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There are problems instead.</exception>
    public T Value => IsOk ? _value! : throw new InvalidOperationException($"No value: {Problems[0].Message}");

    /// <summary>The same problems, as a result of another kind.</summary>
    /// <exception cref="InvalidOperationException">There is a value.</exception>
    public Result<TOther> As<TOther>() =>
        IsOk ? throw new InvalidOperationException("A result with a value has no problems to carry over.") : new Result<TOther>(default, Problems);
}

/// <summary>Makes results.</summary>
public static class Result
{
    /// <summary>A value.</summary>
    public static Result<T> Ok<T>(T value) => new(value, []);

    /// <summary>Problems instead of a value.</summary>
    /// <exception cref="ArgumentException">No problem was given.</exception>
    public static Result<T> Invalid<T>(params IReadOnlyList<Problem> problems) =>
        problems.Count == 0 ? throw new ArgumentException("Name at least one problem.", nameof(problems)) : new Result<T>(default, problems);
}
