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
    /// Its intervals are short for few points, since the readings choose which of them count: of 2000 simulated 95 % intervals 87 % held the truth at 25 points and
    /// 90 % at 36, and 14 % and 10 % of clean beds had a point named as an outlier. Use it to find wrong readings, then fit what is left.
    /// </summary>
    LeastTrimmedSquares,
}
