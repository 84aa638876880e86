namespace PrinterMath.Tension;

/// <summary>Weighted straight line y = Mean + Slope·(x − Centre) with uncertainties from its own residuals, whatever their distribution.</summary>
/// <remarks>Source: White 1980, A heteroskedasticity-consistent covariance matrix estimator, Econometrica 48 (from memory).</remarks>
internal readonly record struct WeightedLine(double Centre, double Deviation, double Mean, double Slope, double MeanUncertainty, double SlopeUncertainty)
{
    /// <param name="x">Abscissae.</param>
    /// <param name="y">Ordinates.</param>
    /// <param name="weight">Weights that sum to one.</param>
    /// <param name="correction">Factor on the variances for the degrees of freedom spent.</param>
    internal static WeightedLine Through(double[] x, double[] y, double[] weight, double correction)
    {
        double meanX = 0, meanY = 0;
        for (int j = 0; j < x.Length; j++)
        {
            meanX += weight[j] * x[j];
            meanY += weight[j] * y[j];
        }

        double sxx = 0, sxy = 0;
        for (int j = 0; j < x.Length; j++)
        {
            sxx += weight[j] * (x[j] - meanX) * (x[j] - meanX);
            sxy += weight[j] * (x[j] - meanX) * (y[j] - meanY);
        }

        double slope = sxx > 0 ? sxy / sxx : 0, ofMean = 0, ofSlope = 0;
        for (int j = 0; j < x.Length; j++)
        {
            double wr = weight[j] * (y[j] - meanY - (slope * (x[j] - meanX)));
            ofMean += wr * wr;
            ofSlope += wr * wr * (x[j] - meanX) * (x[j] - meanX);
        }

        return new WeightedLine(
            meanX, Math.Sqrt(sxx), meanY, slope, Math.Sqrt(ofMean * correction), sxx > 0 ? Math.Sqrt(ofSlope * correction) / sxx : 0);
    }
}
