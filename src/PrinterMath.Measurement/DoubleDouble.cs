using System.Diagnostics;

namespace PrinterMath.Measurement;

/// <summary>A number as the unevaluated sum of two doubles, about 32 decimal digits.</summary>
/// <remarks>
/// Source: Joldes, Muller, Popescu 2017, Tight and rigorous error bounds for basic building blocks of double-word arithmetic,
/// ACM Transactions on Mathematical Software 44(2), algorithms 6 (sum), 12 (product) and 17 (quotient) (numbers from memory).
/// The operands must stay well inside the exponent range, so callers scale by powers of two first.
/// </remarks>
[DebuggerDisplay("{High} + {Low}")]
internal readonly struct DoubleDouble
{
    internal DoubleDouble(double high, double low)
    {
        High = high;
        Low = low;
    }

    internal double High { get; }

    internal double Low { get; }

    public static implicit operator DoubleDouble(double value) => new(value, 0);

    public static explicit operator double(DoubleDouble value) => value.High + value.Low;

    public static DoubleDouble operator -(DoubleDouble value) => new(-value.High, -value.Low);

    public static DoubleDouble operator +(DoubleDouble x, DoubleDouble y)
    {
        DoubleDouble high = TwoSum(x.High, y.High);
        DoubleDouble low = TwoSum(x.Low, y.Low);
        DoubleDouble sum = FastTwoSum(high.High, high.Low + low.High);
        return FastTwoSum(sum.High, low.Low + sum.Low);
    }

    public static DoubleDouble operator -(DoubleDouble x, DoubleDouble y) => x + -y;

    public static DoubleDouble operator *(DoubleDouble x, DoubleDouble y)
    {
        double high = x.High * y.High;
        double rounding = Math.FusedMultiplyAdd(x.High, y.High, -high);
        double cross = Math.FusedMultiplyAdd(x.Low, y.High, Math.FusedMultiplyAdd(x.High, y.Low, x.Low * y.Low));
        return FastTwoSum(high, rounding + cross);
    }

    public static DoubleDouble operator /(DoubleDouble x, DoubleDouble y)
    {
        double quotient = x.High / y.High;
        DoubleDouble remainder = x - (y * quotient);
        return FastTwoSum(quotient, remainder.High / y.High);
    }

    internal static DoubleDouble SquareRoot(DoubleDouble x)
    {
        if (x.High <= 0)
        {
            return 0;
        }

        double root = Math.Sqrt(x.High);
        double remainder = Math.FusedMultiplyAdd(-root, root, x.High) + x.Low;
        return FastTwoSum(root, remainder / (2 * root));
    }

    /// <summary>Multiplication by 2ᵉ, exact.</summary>
    internal static DoubleDouble Scale(DoubleDouble x, int exponent) =>
        new(Math.ScaleB(x.High, exponent), Math.ScaleB(x.Low, exponent));

    private static DoubleDouble TwoSum(double a, double b)
    {
        double sum = a + b;
        double part = sum - a;
        return new DoubleDouble(sum, (a - (sum - part)) + (b - part));
    }

    private static DoubleDouble FastTwoSum(double a, double b)
    {
        double sum = a + b;
        return new DoubleDouble(sum, b - (sum - a));
    }
}
