namespace PrinterMath.Tramming;

/// <summary>What a robust regression says: coefficients, the scale of the residuals, a weight from 0 to 1 for each reading, and the variance for those weights.</summary>
internal sealed record RobustWeights(double[] Coefficients, double Scale, double[] Weights, double Variance);
