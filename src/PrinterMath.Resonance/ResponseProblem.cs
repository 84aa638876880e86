using System.Numerics;

namespace PrinterMath.Resonance;

/// <summary>The lines of a response that are fitted, with their errors, and the columns of a model of them.</summary>
/// <remarks>
/// Beside the poles there are two remainders, complex: that of all modes below the band, ω⁻² times the form's power of ω, and that of all above, the form's power itself (0 for displacement over force or motion
/// over motion, 1 for velocity, 2 for acceleration).
/// Source: D. J. Ewins, Modal Testing, 2nd ed. 2000, section 4.4 on residuals (from memory).
/// </remarks>
internal sealed class ResponseProblem
{
    internal const int Remainders = 4;
    private const double Reach = 16;
    private readonly Complex[] _values;
    private readonly double[] _weights;
    private readonly int _power;
    private readonly PoleSpectrum _spectrum;

    internal ResponseProblem(ResponseLines lines, int power, int first, int last)
    {
        Frequencies = lines.Frequencies[first..(last + 1)];
        _values = lines.Values[first..(last + 1)];
        _power = power;
        Errors = ResponseErrors.Of(lines with
        {
            Frequencies = Frequencies,
            Values = _values,
            Coherences = lines.Coherences.Length > 0 ? lines.Coherences[first..(last + 1)] : [],
        });
        _weights = [.. Errors.Deviations.Select(deviation => 1 / deviation)];
        _spectrum = new PoleSpectrum(Frequencies, lines.Source);
        Middle = 2 * Math.PI * Math.Sqrt(Frequencies[0] * Frequencies[^1]);
        RoundingSum = 2 * Count * Math.Pow(ResponseErrors.Rounding * _values.Zip(_weights, (value, weight) => value.Magnitude * weight).Max(), 2);
    }

    internal double[] Frequencies { get; }

    internal ResponseErrors Errors { get; }

    internal int Count => Frequencies.Length;

    /// <summary>Sum of weighted squares that rounding alone may leave.</summary>
    internal double RoundingSum { get; }

    /// <summary>Weighted squares of the values.</summary>
    internal double TotalSum => _values.Zip(_weights, (value, weight) => Math.Pow(value.Magnitude * weight, 2)).Sum();

    private double Middle { get; }

    /// <summary>The weighted values: real parts, then imaginary parts.</summary>
    internal double[] Right() => Weighted(_values);

    /// <summary>Columns of what is linear: for each pole the real and the imaginary part of its residue, then the remainders.</summary>
    internal double[][] LinearColumns(ReadOnlySpan<ResponsePole> poles)
    {
        List<double[]> columns = [];
        PoleSpectrum.Values own = new(Count), conjugate = new(Count);
        Complex[] line = new Complex[Count];
        foreach (ResponsePole pole in poles)
        {
            _spectrum.Evaluate(pole.Place, own, conjugate);
            columns.AddRange(ResidueColumns(own, conjugate, line));
        }

        columns.AddRange(RemainderColumns(line));
        return [.. columns];
    }

    /// <summary>All columns: for each pole those of ln ω_n, ln ζ and its residue, then the remainders.</summary>
    internal double[][] AllColumns(ReadOnlySpan<ResponsePole> poles)
    {
        List<double[]> columns = [];
        PoleSpectrum.Values own = new(Count), conjugate = new(Count);
        Complex[] line = new Complex[Count];
        foreach (ResponsePole pole in poles)
        {
            _spectrum.Evaluate(pole.Place, own, conjugate);
            foreach (Complex change in (ReadOnlySpan<Complex>)[pole.Place, pole.ByLogDamping])
            {
                Complex left = pole.Residue * change, right = Complex.Conjugate(left);
                for (int k = 0; k < line.Length; k++)
                {
                    line[k] = (left * own.ByPole[k]) + (right * conjugate.ByPole[k]);
                }

                columns.Add(Weighted(line));
            }

            columns.AddRange(ResidueColumns(own, conjugate, line));
        }

        columns.AddRange(RemainderColumns(line));
        return [.. columns];
    }

    /// <summary>Weighted squares that projecting a residual on one more pole takes away, over lines that its peak reaches.</summary>
    internal double Gain(ReadOnlySpan<double> residual, ResponsePole pole)
    {
        double reach = Math.Max(Reach * pole.Damping * pole.Hertz, Reach * (Frequencies[^1] - Frequencies[0]) / (4 * Count));
        int from = Lower(pole.Hertz - reach), to = Lower(pole.Hertz + reach);
        double aa = 0, ab = 0, bb = 0, ar = 0, br = 0;
        Complex place = pole.Place;
        for (int k = from; k < to; k++)
        {
            Complex s = new(0, 2 * Math.PI * Frequencies[k]);
            Complex a = _weights[k] / (s - place), b = _weights[k] / (s - Complex.Conjugate(place));
            Complex sum = a + b, difference = Complex.ImaginaryOne * (a - b);
            double re = residual[k], im = residual[Count + k];
            aa += (sum.Real * sum.Real) + (sum.Imaginary * sum.Imaginary);
            bb += (difference.Real * difference.Real) + (difference.Imaginary * difference.Imaginary);
            ab += (sum.Real * difference.Real) + (sum.Imaginary * difference.Imaginary);
            ar += (sum.Real * re) + (sum.Imaginary * im);
            br += (difference.Real * re) + (difference.Imaginary * im);
        }

        double determinant = (aa * bb) - (ab * ab);
        return determinant > 1e-9 * aa * bb ? ((ar * ar * bb) - (2 * ar * br * ab) + (br * br * aa)) / determinant : 0;
    }

    /// <summary>The model's values at the lines.</summary>
    internal Complex[] Fitted(ReadOnlySpan<double> residual)
    {
        Complex[] fitted = new Complex[Count];
        for (int k = 0; k < fitted.Length; k++)
        {
            fitted[k] = _weights[k] > 0 ? _values[k] - (new Complex(residual[k], residual[Count + k]) / _weights[k]) : Complex.Zero;
        }

        return fitted;
    }

    private int Lower(double hertz)
    {
        int found = Array.BinarySearch(Frequencies, hertz);
        return found >= 0 ? found : ~found;
    }

    private double[][] ResidueColumns(PoleSpectrum.Values own, PoleSpectrum.Values conjugate, Complex[] line)
    {
        for (int k = 0; k < line.Length; k++)
        {
            line[k] = own.Plain[k] + conjugate.Plain[k];
        }

        double[] real = Weighted(line);
        for (int k = 0; k < line.Length; k++)
        {
            line[k] = Complex.ImaginaryOne * (own.Plain[k] - conjugate.Plain[k]);
        }

        return [real, Weighted(line)];
    }

    private IEnumerable<double[]> RemainderColumns(Complex[] line)
    {
        foreach (int power in (int[])[_power - 2, _power])
        {
            foreach (Complex unit in (Complex[])[Complex.One, Complex.ImaginaryOne])
            {
                for (int k = 0; k < line.Length; k++)
                {
                    line[k] = unit * Math.Pow(2 * Math.PI * Frequencies[k] / Middle, power);
                }

                yield return Weighted(line);
            }
        }
    }

    private double[] Weighted(ReadOnlySpan<Complex> values)
    {
        double[] weighted = new double[2 * Count];
        for (int k = 0; k < values.Length; k++)
        {
            weighted[k] = _weights[k] * values[k].Real;
            weighted[Count + k] = _weights[k] * values[k].Imaginary;
        }

        return weighted;
    }
}
