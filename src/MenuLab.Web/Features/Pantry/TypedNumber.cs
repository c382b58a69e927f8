using MenuLab.Core;
using MenuLab.Core.House;

namespace MenuLab.Web.Features.Pantry;

/// <summary>Numbers of the pantry's small forms.</summary>
public static class TypedNumber
{
    /// <summary>Reads a number, or adds a problem and answers NaN.</summary>
    public static double Read(string text, string field, string what, List<Problem> problems)
    {
        var parsed = HouseParse.Number(text);
        if (parsed.IsRead)
        {
            return parsed.Value;
        }
        problems.Add(new Problem(field, text.Trim().Length == 0 ? $"Give {what}." : parsed.Echo));
        return double.NaN;
    }
}
