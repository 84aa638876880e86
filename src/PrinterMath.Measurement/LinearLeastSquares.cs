using System.Globalization;

namespace PrinterMath.Measurement;

/// <summary>Fits a model that is linear in its coefficients, y = b₀ + b₁x₁ + ... + bₚxₚ, to readings by least squares.</summary>
/// <remarks>
/// Minimises Σ((yᵢ − ŷᵢ)/uᵢ)². The design is factored by Gram–Schmidt in doubled precision (about 32 digits) after scaling each column by a
/// power of two, with the constant as the first column, which centres the others; a residual is then correct to the last digits even
/// where it is the difference of nearly equal numbers. What is left is the rounding of the design itself in the sixteenth digit, which
/// <see cref="LinearFit.ConditionNumber"/> may magnify; for powers of one variable <see cref="PolynomialFit"/> avoids it.
/// Source: Björck 1996, Numerical Methods for Least Squares Problems, sections 1.4 and 2.4 (from memory). Checked against the certified
/// values of the NIST Statistical Reference Datasets.
/// </remarks>
/// <example><code>
/// LinearFit line = LinearLeastSquares.Fit(design: [1.5, 2.6, 4.8], columns: 1, response: [-0.171, -0.169, -0.166]);
/// if (line.TryGetCoefficients(out IReadOnlyList&lt;double&gt; b)) { Console.WriteLine($"{b[0]} + {b[1]} x"); }
/// </code></example>
public static class LinearLeastSquares
{
    /// <summary>Given uncertainties may differ by this factor at most.</summary>
    internal const double LargestUncertaintyRatio = 1e100;

    /// <summary>Relative rounding of a design given in doubles.</summary>
    private const double DoubleRounding = 1.1102230246251565e-16;

    /// <summary>A fit of readings that all weigh the same.</summary>
    /// <param name="design">Design matrix row by row: for each reading the values of the columns. Without the constant, see <see cref="LinearFitOptions.Intercept"/>.</param>
    /// <param name="columns">Number of columns, 1 or more; 0 is legal with an intercept and fits the mean.</param>
    /// <param name="response">The readings, in any one unit; at least one.</param>
    /// <param name="options">How to fit; null for the defaults.</param>
    /// <returns>The fit; when the data do not determine the coefficients, its findings say why.</returns>
    /// <exception cref="ArgumentException">The design does not have readings × columns entries.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or there are too few columns or no readings.</exception>
    public static LinearFit Fit(ReadOnlySpan<double> design, int columns, ReadOnlySpan<double> response, LinearFitOptions? options = null) =>
        Fit(design, columns, response, [], options);

    /// <summary>A fit of readings with standard uncertainties, weighted by 1/u².</summary>
    /// <param name="design">Design matrix row by row: for each reading the values of the columns. Without the constant, see <see cref="LinearFitOptions.Intercept"/>.</param>
    /// <param name="columns">Number of columns, 1 or more; 0 is legal with an intercept and fits the mean.</param>
    /// <param name="response">The readings, in any one unit; at least one.</param>
    /// <param name="standardUncertainties">
    /// Standard uncertainty of each reading, greater than zero, in the unit of the response, or in any unit if
    /// <see cref="LinearFitOptions.Uncertainty"/> is <see cref="ResponseUncertainty.Relative"/>; the largest at most 10¹⁰⁰ times the smallest.
    /// Empty when all readings weigh the same.
    /// </param>
    /// <param name="options">How to fit; null for the defaults.</param>
    /// <returns>The fit; when the data do not determine the coefficients, its findings say why.</returns>
    /// <exception cref="ArgumentException">The design does not have readings × columns entries, or there are not as many uncertainties as readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, an uncertainty is not positive, or there are too few columns or no readings.</exception>
    public static LinearFit Fit(
        ReadOnlySpan<double> design,
        int columns,
        ReadOnlySpan<double> response,
        ReadOnlySpan<double> standardUncertainties,
        LinearFitOptions? options = null)
    {
        options ??= new LinearFitOptions();
        Guard.AtLeast(columns, options.Intercept ? 0 : 1);
        CheckReadings(response, standardUncertainties, options);
        if (design.Length != (long)columns * response.Length)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"design has {design.Length} entries; {response.Length} readings of {columns} columns need {(long)columns * response.Length}."),
                nameof(design));
        }

        Guard.AllFinite(design);
        DoubleDouble[][] byColumn = new DoubleDouble[columns][];
        for (int j = 0; j < columns; j++)
        {
            byColumn[j] = new DoubleDouble[response.Length];
            for (int i = 0; i < response.Length; i++)
            {
                byColumn[j][i] = design[(i * columns) + j];
            }
        }

        return new LinearFitSolver(byColumn, new int[columns], DoubleRounding, options).Solve(response, standardUncertainties);
    }

    internal static void CheckReadings(ReadOnlySpan<double> response, ReadOnlySpan<double> standardUncertainties, LinearFitOptions options)
    {
        Guard.AtLeast(response.Length, 1, nameof(response));
        Guard.AllFinite(response);
        if (!Enum.IsDefined(options.Uncertainty))
        {
            throw Guard.Out(nameof(options), options.Uncertainty, "Relative or Absolute");
        }

        if (standardUncertainties.IsEmpty)
        {
            return;
        }

        if (standardUncertainties.Length != response.Length)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"There are {standardUncertainties.Length} standard uncertainties for {response.Length} readings."),
                nameof(standardUncertainties));
        }

        double smallest = double.PositiveInfinity, largest = 0;
        foreach (double u in standardUncertainties)
        {
            Guard.Positive(u, nameof(standardUncertainties));
            smallest = Math.Min(smallest, u);
            largest = Math.Max(largest, u);
        }

        if (largest / LargestUncertaintyRatio > smallest)
        {
            throw Guard.Out(nameof(standardUncertainties), largest, "at most 1e100 times the smallest");
        }
    }
}
