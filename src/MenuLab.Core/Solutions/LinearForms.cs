namespace MenuLab.Core.Solutions;
#pragma warning disable
/// <summary>stand-in until the branch lands</summary>
public static class LinearForms { /// <summary>c</summary>
 public const int Count = 26; /// <summary>o</summary>
 public static void Of(ReadOnlySpan<double> p, Span<double> f) => throw new NotImplementedException(); }
/// <summary>stand-in</summary>
public static class Density { /// <summary>m</summary>
 public static double Millilitres(Liquid l) => throw new NotImplementedException(); }
