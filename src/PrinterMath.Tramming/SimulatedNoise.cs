namespace PrinterMath.Tramming;

/// <summary>Residuals about the least-squares plane of readings that are noise alone, from a seed.</summary>
internal static class SimulatedNoise
{
    internal static double[][] Residuals(ZoneFrame frame, double[] uncertainties, PlaneFlatnessOptions options)
    {
        var random = new Random(options.Seed);
        double[][] trials = new double[options.TrialsOf(uncertainties.Length)][];
        for (int t = 0; t < trials.Length; t++)
        {
            double factor = Factor(random, options.RepeatabilityDegreesOfFreedom);
            double[] trial = new double[uncertainties.Length];
            for (int i = 0; i < trial.Length; i += 2)
            {
                (double one, double other) = Normals(random);
                trial[i] = factor * uncertainties[i] * one;
                if (i + 1 < trial.Length)
                {
                    trial[i + 1] = factor * uncertainties[i + 1] * other;
                }
            }

            RemovePlane(trial, frame);
            trials[t] = trial;
        }

        return trials;
    }

    internal static void RemovePlane(double[] heights, ZoneFrame frame)
    {
        double mean = 0, along = 0, across = 0, squaresU = 0, squaresV = 0;
        for (int i = 0; i < heights.Length; i++)
        {
            mean += heights[i];
            along += heights[i] * frame.U[i];
            across += heights[i] * frame.V[i];
            squaresU += frame.U[i] * frame.U[i];
            squaresV += frame.V[i] * frame.V[i];
        }

        (mean, along, across) = (mean / heights.Length, along / squaresU, across / squaresV);
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] -= mean + (along * frame.U[i]) + (across * frame.V[i]);
        }
    }

    /// <summary>True over stated repeatability, √(ν/χ²): the stated one came from ν degrees of freedom. χ² as a sum of squares, or Wilson and Hilferty's cube beyond 60.</summary>
    private static double Factor(Random random, double degreesOfFreedom)
    {
        if (double.IsPositiveInfinity(degreesOfFreedom))
        {
            return 1;
        }

        if (degreesOfFreedom > 60)
        {
            double spread = 2 / (9 * degreesOfFreedom);
            double root = 1 - spread + (Normal(random) * Math.Sqrt(spread));
            return Math.Pow(root, -1.5);
        }

        double sum = 0;
        for (int i = 0; i < (int)degreesOfFreedom; i++)
        {
            double z = Normal(random);
            sum += z * z;
        }

        return Math.Sqrt((int)degreesOfFreedom / sum);
    }

    private static double Normal(Random random) => Normals(random).One;

    /// <summary>Box and Muller's transform.</summary>
    private static (double One, double Other) Normals(Random random)
    {
        double size = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
        (double sine, double cosine) = Math.SinCos(2 * Math.PI * random.NextDouble());
        return (size * cosine, size * sine);
    }
}
