namespace PrinterMath.Tramming;

/// <summary>What is to be levelled and how: measured heights at the supports and slopes, the height the reference is brought to, limits of the changes, and weights when their sum is to be least.</summary>
internal sealed record LevelGoal(double[] Heights, double SlopeX, double SlopeY, double Reference, bool HeightIsGiven, bool IsAnchored, double[] Low, double[] High, double[]? Least);
