using MathNet.Numerics.LinearAlgebra;

namespace PrinterMath.Resonance;

/// <summary>Maximises the likelihood of a spectral model by damped scoring, and gives the covariance of what it finds.</summary>
/// <remarks>
/// Scoring with A = ν·JᵀJ, J the relative derivatives. Since neighbouring lines are correlated, the covariance is A⁻¹·B·A⁻¹ with
/// B = ν·Σ J_iᵀ·ρ(i − j)·J_j. Source for the form: P. J. Huber 1967, Proc. 5th Berkeley Symposium 1, 221-233 (from memory).
/// </remarks>
internal static class WhittleFit
{
    /// <summary>A small gain says that the top is near only when the step was hardly shortened.</summary>
    private const double LittleDamping = 0.1;

    /// <summary>The most likely model near the given one, earlier terms held still; stops when a round gains less than <paramref name="least"/> in log-likelihood.</summary>
    /// <remarks>A shortfall of g in log-likelihood is an error of about √(2g) standard uncertainties.</remarks>
    internal static SpectralModel Maximise(SpectrumLines lines, SpectralModel start, int firstFree, int rounds, double least, CancellationToken cancellation)
    {
        SpectralModel best = start;
        double damping = 1e-3;
        for (int round = 0; round < rounds && damping < 1e8; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            List<double[]> columns = best.Columns(lines, firstFree);
            (Matrix<double> information, Vector<double> gradient) = Normal(lines, best, columns);
            while (damping < 1e8)
            {
                Matrix<double> damped = information.Clone();
                for (int i = 0; i < damped.RowCount; i++)
                {
                    damped[i, i] = (information[i, i] * (1 + damping)) + 1e-9;
                }

                SpectralModel tried = Step(lines, best, damped.Cholesky().Solve(gradient), firstFree);
                double gain = tried.LogLikelihood - best.LogLikelihood;
                if (gain >= 0)
                {
                    bool nearlyFull = damping < LittleDamping;
                    best = tried;
                    damping = Math.Max(1e-9, damping / 8);
                    if (gain < least && nearlyFull)
                    {
                        return best;
                    }

                    break;
                }

                damping *= 8;
            }
        }

        return best;
    }

    /// <summary>Covariance of the terms' parameters in their order, then of the floor; a damping ratio at its bound is held still and has none.</summary>
    internal static Matrix<double> Covariance(SpectrumLines lines, SpectralModel model)
    {
        List<double[]> columns = model.Columns(lines, 0);
        int p = columns.Count;
        (Matrix<double> a, _) = Normal(lines, model, columns);
        Matrix<double> b = Matrix<double>.Build.Dense(p, p);
        for (int r = 0; r < p; r++)
        {
            for (int c = r; c < p; c++)
            {
                double sum = 0;
                for (int lag = 0; lag < lines.Correlation.Length; lag++)
                {
                    sum += lines.Correlation[lag] * (lag == 0 ? Product(columns[r], columns[c], 0) : Product(columns[r], columns[c], lag) + Product(columns[c], columns[r], lag));
                }

                b[r, c] = b[c, r] = lines.Averages * sum;
            }
        }

        for (int j = 1; j < model.LogFloor.Length; j++)
        {
            int wave = p - 1 - model.LogFloor.Length + j;
            b[wave, wave] += SpectralModel.WavePrecision(j);
        }

        for (int i = 0; i < p; i++)
        {
            a[i, i] += 1e-9;
        }

        Matrix<double> inverse = a.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(p));
        return inverse * b * inverse;
    }

    private static (Matrix<double> Information, Vector<double> Gradient) Normal(SpectrumLines lines, SpectralModel model, List<double[]> columns)
    {
        int p = columns.Count;
        Matrix<double> information = Matrix<double>.Build.Dense(p, p);
        Vector<double> gradient = Vector<double>.Build.Dense(p);
        double[] surplus = [.. model.Expected.Select((e, i) => (lines.Densities[i] / e) - 1)];
        for (int r = 0; r < p; r++)
        {
            gradient[r] = lines.Averages * Product(columns[r], surplus, 0);
            for (int c = r; c < p; c++)
            {
                information[r, c] = information[c, r] = lines.Averages * Product(columns[r], columns[c], 0);
            }
        }

        int waves = model.LogFloor.Length, level = p - 1 - waves;
        for (int j = 1; j < waves; j++)
        {
            information[level + j, level + j] += SpectralModel.WavePrecision(j);
            gradient[level + j] -= SpectralModel.WavePrecision(j) * model.LogFloor[j];
        }

        return (information, gradient);
    }

    private static double Product(double[] left, double[] right, int lag)
    {
        double sum = 0;
        for (int i = 0; i + lag < left.Length; i++)
        {
            sum += left[i] * right[i + lag];
        }

        return sum;
    }

    private static SpectralModel Step(SpectrumLines lines, SpectralModel from, Vector<double> step, int firstFree)
    {
        SpectralTerm[] terms = [.. from.Terms];
        TermSpectrum[] spectra = [.. from.Spectra];
        int at = 0;
        for (int t = firstFree; t < terms.Length; t++)
        {
            SpectralTerm term = terms[t];
            double limit = Math.Max(0.5 * Math.PI / (term.Angle * lines.SegmentLength), term.Damping);
            terms[t] = term.Moved(step[at], step[at + 1], term.IsTone ? 0 : step[at + 2], limit, lines.LeastDamping(term.Angle));
            spectra[t] = lines.Spectrum(terms[t]);
            at += term.Parameters;
        }

        double[] floor = new double[from.LogFloor.Length];
        for (int j = 0; j < floor.Length; j++)
        {
            floor[j] = from.LogFloor[j] + Math.Clamp(step[at + j], -1.5, 1.5);
        }

        double slope = Math.Max(0, from.Slope + Math.Clamp(step[at + floor.Length] * from.SlopeUnit, -from.Slope, 5 * from.SlopeUnit));
        return new SpectralModel(lines, terms, spectra, floor, slope);
    }
}
