namespace PrinterMath.Tramming;

/// <summary>Root mean square of the residuals: T² is a quadratic in the size, with one root above zero.</summary>
internal sealed class RootMeanSquareMeasure : FlatnessMeasure
{
    internal override double Of(double[] residuals) => FlatnessMeasures.RootMeanSquare(residuals);

    internal override double SizeAt(double[] noise, double alone, double[] shape, double value, double start, double resolution)
    {
        double both = 0;
        for (int i = 0; i < shape.Length; i++)
        {
            both += noise[i] * shape[i];
        }

        double half = both / shape.Length; // T(s) = 1: k² + 2·half·k = value² − T(e)²
        double rest = (value - alone) * (value + alone);
        double root = Math.Sqrt((half * half) + rest);
        return half > 0 ? rest / (half + root) : root - half;
    }
}
