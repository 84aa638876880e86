using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The plane of the bed as it should be after all turns of a plan, heights positive upwards: level, as well as the probe and the leads allow.</summary>
/// <remarks>
/// It stands as far from level as the fitted plane was from the true one, plus what an error of the leads does to the changes. How
/// precisely the hand sets a turn, springs and play are not in it: probe again after turning.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PredictedPlane
{
    private readonly double _height;
    private readonly PlaneSolution _measured;
    private readonly PrincipalAxes _supports;
    private readonly Place[] _leadErrors;
    private readonly double _width;
    private readonly double _depth;

    internal PredictedPlane(double height, in PlaneSolution measured, PrincipalAxes supports, Place[] leadErrors, double width, double depth)
    {
        _height = height;
        _measured = measured;
        _supports = supports;
        _leadErrors = leadErrors;
        _width = width;
        _depth = depth;
    }

    /// <summary>Highest minus lowest height over the rectangle that encloses the probe points: what is left of the tilt.</summary>
    /// <remarks>
    /// Mean and standard uncertainty of |b|·w + |c|·d with b and c about zero, normal or, for few points, t-distributed: never zero, because the
    /// probe's noise becomes tilt.
    /// Source: JCGM 101:2008, clause 5, propagation of distributions, here in closed form (clause from memory).
    /// </remarks>
    public Measured<Length> HeightSpread
    {
        get
        {
            SlopeCovariance slopes = _measured.SlopeCovariance;
            double xx = slopes.X, yy = slopes.Y, xy = slopes.Both;
            foreach (Place lead in _leadErrors)
            {
                (double u, double v) = _supports.Local(lead.X, lead.Y);
                double along = u / _supports.AlongMoment;
                double across = v / _supports.AcrossMoment;
                double gx = (along * _supports.Cosine) - (across * _supports.Sine);
                double gy = (along * _supports.Sine) + (across * _supports.Cosine);
                xx += lead.Weight * gx * gx;
                yy += lead.Weight * gy * gy;
                xy += lead.Weight * gx * gy;
            }

            return TiltSpread.OfLeveled(new SlopeCovariance(xx, yy, xy), _width, _depth, _measured.DegreesOfFreedom);
        }
    }

    /// <summary>Height at a place after the turns, positive upwards.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height: the same everywhere, with an uncertainty that is not.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public Measured<Length> HeightAt(Length x, Length y)
    {
        double px = Guard.Finite(x.Meters, nameof(x));
        double py = Guard.Finite(y.Meters, nameof(y));
        double variance = _measured.HeightCovariance(px, py, px, py);
        foreach (Place lead in _leadErrors)
        {
            double influence = _supports.Influence(px, py, lead.X, lead.Y);
            variance += lead.Weight * influence * influence;
        }

        return Measured<Length>.FromSi(_height, Math.Sqrt(variance), _measured.DegreesOfFreedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>What is left of the tilt.</returns>
    public override string ToString() => $"level to {HeightSpread}";
}
