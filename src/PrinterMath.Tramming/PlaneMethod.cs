namespace PrinterMath.Tramming;

/// <summary>How <see cref="PlaneFit"/> weighs the readings; all of them fit in z.</summary>
public enum PlaneMethod
{
    /// <summary>Least squares: the best when the scatter is random, carried away by a single wrong reading.</summary>
    LeastSquares,

    /// <summary>
    /// Huber's M-estimate: a reading counts in full up to k scales from the plane and no further. For a wrong reading among many; not for several at the rim of the bed.
    /// </summary>
    Huber,

    /// <summary>
    /// Least trimmed squares, reweighted: the plane of the half of the readings that agree best, then least squares of all that agree with it. For up to nearly half wrong readings.
    /// Its intervals are short for few points, since the readings choose which of them count: simulated 95 % intervals held the truth in 89 % at 25 points and 91 % at 36.
    /// </summary>
    LeastTrimmedSquares,
}
