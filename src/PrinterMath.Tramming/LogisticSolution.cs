namespace PrinterMath.Tramming;

/// <summary>Middle µ and spread s of a logistic curve that falls with height, their variances and covariance, the log-likelihood, and the degrees of freedom.</summary>
internal readonly record struct LogisticSolution(
    double Middle, double Spread, double MiddleVariance, double SpreadVariance, double Covariance, double LogLikelihood, double DegreesOfFreedom);
