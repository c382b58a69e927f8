namespace MenuLab.Core.Quantities;

/// <summary>An amount of money in one currency. It has no default: unset money refuses to be read.</summary>
public readonly record struct Money
{
    private readonly string? _currency;

    private Money(decimal amount, string currency)
    {
        Amount = amount;
        _currency = currency;
    }

    /// <summary>The amount, in units of the currency (euros, not cents).</summary>
    public decimal Amount { get; }

    /// <summary>ISO 4217 code, three capital letters.</summary>
    /// <exception cref="InvalidOperationException">Never set.</exception>
    public string Currency => _currency ?? throw new InvalidOperationException("This amount of money was never set.");

    /// <summary>So much of a currency.</summary>
    /// <exception cref="ArgumentException">The code is not three capital letters A to Z.</exception>
    public static Money Of(decimal amount, string currency) =>
        currency is { Length: 3 } && currency.All(c => c is >= 'A' and <= 'Z')
            ? new Money(amount, currency)
            : throw new ArgumentException("Give an ISO 4217 code, three capital letters.", nameof(currency));

    /// <summary>Sum in one currency.</summary>
    /// <exception cref="InvalidOperationException">Two currencies: nothing is converted silently.</exception>
    public static Money operator +(Money left, Money right) =>
        left.Currency == right.Currency
            ? new Money(left.Amount + right.Amount, left.Currency)
            : throw new InvalidOperationException($"Cannot add {left.Currency} to {right.Currency} without a rate.");

    /// <summary>So many times the amount; not rounded.</summary>
    public static Money operator *(decimal factor, Money money) => new(factor * money.Amount, money.Currency);

    /// <summary>Rounded to so many decimals, halves away from zero.</summary>
    public Money Rounded(int decimals) => new(Math.Round(Amount, decimals, MidpointRounding.AwayFromZero), Currency);
}
