using System.Diagnostics;
using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>A least-squares polynomial y = Σ bₖ(x − x₀)ᵏ.</summary>
/// <remarks>
/// The powers are formed in doubled precision, so that their rounding, which a design matrix of doubles cannot avoid, does not
/// reach the coefficients: the tenth-degree NIST set Filip, where that alone costs nine digits, keeps all of its digits.
/// A high degree still swings between and beyond the readings; <see cref="LinearPrediction.StandardUncertainty"/> tells.
/// </remarks>
/// <example><code>
/// PolynomialFit bow = PolynomialFit.Fit(x, z, degree: 2, origin: 0.11);
/// LinearPrediction middle = bow.ValueAt(0.11);
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PolynomialFit
{
    /// <summary>Relative rounding of a power: degree times a unit in the 104th bit, with room.</summary>
    private const double PowerRounding = 1.0 / (1L << 50) / (1L << 46);

    private readonly int _exponent;

    private PolynomialFit(LinearFit terms, int degree, double origin, int exponent)
    {
        Terms = terms;
        Degree = degree;
        Origin = origin;
        _exponent = exponent;
    }

    /// <summary>Degree of the polynomial.</summary>
    public int Degree { get; }

    /// <summary>Origin x₀ of the powers, in the unit of x.</summary>
    public double Origin { get; }

    /// <summary>
    /// The linear fit behind it: coefficient k belongs to (x − x₀)ᵏ, or to (x − x₀)ᵏ⁺¹ when it has no intercept. Findings, standard errors,
    /// covariance and diagnostics are there.
    /// </summary>
    public LinearFit Terms { get; }

    /// <summary>A polynomial through readings that all weigh the same.</summary>
    /// <param name="x">Where the readings were taken.</param>
    /// <param name="y">The readings; as many.</param>
    /// <param name="degree">Degree, from 1 to 30.</param>
    /// <param name="origin">Origin x₀ of the powers; in the middle of the readings the coefficients are least correlated.</param>
    /// <param name="options">How to fit; null for the defaults.</param>
    /// <returns>The fit; when the readings do not determine the coefficients, the findings of <see cref="Terms"/> say why.</returns>
    /// <exception cref="ArgumentException">x and y differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, there are no readings, or the degree is out of range.</exception>
    public static PolynomialFit Fit(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree, double origin = 0, LinearFitOptions? options = null) =>
        Fit(x, y, [], degree, origin, options);

    /// <summary>A polynomial through readings with standard uncertainties, weighted by 1/u².</summary>
    /// <param name="x">Where the readings were taken.</param>
    /// <param name="y">The readings; as many.</param>
    /// <param name="standardUncertainties">Standard uncertainty of each reading, greater than zero, as in <see cref="LinearLeastSquares"/>; or empty.</param>
    /// <param name="degree">Degree, from 1 to 30.</param>
    /// <param name="origin">Origin x₀ of the powers; in the middle of the readings the coefficients are least correlated.</param>
    /// <param name="options">How to fit; null for the defaults.</param>
    /// <returns>The fit; when the readings do not determine the coefficients, the findings of <see cref="Terms"/> say why.</returns>
    /// <exception cref="ArgumentException">x, y and the uncertainties differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, an uncertainty is not positive, there are no readings, or the degree is out of range.</exception>
    public static PolynomialFit Fit(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> standardUncertainties,
        int degree,
        double origin = 0,
        LinearFitOptions? options = null)
    {
        options ??= new LinearFitOptions();
        Guard.Between(degree, 1, 30);
        Guard.Finite(origin);
        Guard.AllFinite(x);
        LinearLeastSquares.CheckReadings(y, standardUncertainties, options);
        if (x.Length != y.Length)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"There are {x.Length} places for {y.Length} readings."), nameof(x));
        }

        int exponent = Exponent(x, origin);
        int coefficients = degree + (options.Intercept ? 1 : 0);
        int places = Places(x, options.Intercept ? null : origin);
        if (places < coefficients && x.Length >= coefficients)
        {
            var few = new LinearFit(null, [LinearFitFindings.TooFewPlaces(places, coefficients)], y.Length, coefficients, options.Intercept);
            return new PolynomialFit(few, degree, origin, exponent);
        }

        DoubleDouble[][] powers = new DoubleDouble[degree][];
        int[] exponents = new int[degree];
        for (int k = 0; k < degree; k++)
        {
            powers[k] = new DoubleDouble[x.Length];
            exponents[k] = (k + 1) * exponent;
            for (int i = 0; i < x.Length; i++)
            {
                DoubleDouble t = Scaled(x[i], origin, exponent);
                powers[k][i] = k == 0 ? t : powers[k - 1][i] * t;
            }
        }

        LinearFit terms = new LinearFitSolver(powers, exponents, PowerRounding, options).Solve(y, standardUncertainties);
        return new PolynomialFit(terms, degree, origin, exponent);
    }

    /// <summary>The polynomial's value at a place, with the standard uncertainty of that mean.</summary>
    /// <param name="x">The place; finite.</param>
    /// <returns>Value and standard uncertainty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The place is not finite, or so far off that the value is not.</exception>
    /// <exception cref="IndeterminateException">The readings do not determine the coefficients.</exception>
    public LinearPrediction ValueAt(double x)
    {
        Guard.Finite(x);
        DoubleDouble t = Scaled(x, Origin, _exponent);
        DoubleDouble[] row = new DoubleDouble[Terms.CoefficientCount];
        int[] exponents = new int[row.Length];
        int power = Terms.HasIntercept ? 0 : 1;
        for (int k = 0; k < row.Length; k++)
        {
            exponents[k] = (k + power) * _exponent;
            row[k] = k > 0 ? row[k - 1] * t : power == 0 ? 1 : t;
        }

        return Terms.Predict(row, exponents, nameof(x));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Degree, origin and coefficients.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"degree {Degree} about {Origin:G6}: {Terms}");

    private static DoubleDouble Scaled(double x, double origin, int exponent) =>
        (DoubleDouble)Math.ScaleB(x, -exponent) - Math.ScaleB(origin, -exponent);

    private static int Exponent(ReadOnlySpan<double> x, double origin)
    {
        double largest = 0;
        foreach (double place in x)
        {
            largest = Math.Max(largest, Math.Abs((place / 2) - (origin / 2)));
        }

        return largest == 0 ? 0 : Math.ILogB(largest) + 1;
    }

    /// <summary>Number of different places; the origin does not count when the polynomial is held to zero there.</summary>
    private static int Places(ReadOnlySpan<double> x, double? held)
    {
        HashSet<double> places = [.. x];
        return held is double zero && places.Contains(zero) ? places.Count - 1 : places.Count;
    }
}
