using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The plane of the bed as it should be after all turns of a plan, heights positive upwards: level, as well as supports, limits, the probe and the leads allow.</summary>
/// <remarks>
/// It stands as far from where it should be as the fitted plane was from the true one, plus what an error of the leads, and the rounding to whole steps, does to the changes. How
/// precisely the hand sets a turn, springs and play are not in it: probe again after turning.
/// </remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class PredictedPlane
{
    private readonly PredictedLevel _level;
    private readonly PlaneSolution _measured;
    private readonly TwistFit? _removed;
    private readonly SupportMotion _supports;
    private readonly Place[] _errors;
    private readonly double _width;
    private readonly double _depth;

    internal PredictedPlane(in PredictedLevel level, in PlaneSolution measured, TwistFit? removed, in SupportMotion supports, Place[] errors, double width, double depth)
    {
        _level = level;
        _measured = measured;
        _removed = removed;
        _supports = supports;
        _errors = errors;
        _width = width;
        _depth = depth;
    }

    /// <summary>Slope along x that is left, a ratio; zero unless supports or limits keep the bed from becoming level.</summary>
    public Measured<double> SlopeX => Measured<double>.FromSi(_level.SlopeX, Math.Sqrt(Slopes.X), _measured.DegreesOfFreedom);

    /// <summary>Slope along y that is left, a ratio.</summary>
    public Measured<double> SlopeY => Measured<double>.FromSi(_level.SlopeY, Math.Sqrt(Slopes.Y), _measured.DegreesOfFreedom);

    /// <summary>Highest minus lowest height over the rectangle that encloses the probe points: what is left of the tilt.</summary>
    /// <remarks>
    /// Mean and standard uncertainty of |b|·w + |c|·d with b and c about the slopes that are left, normal or, for few points, t-distributed: never zero, because the
    /// probe's noise becomes tilt.
    /// Source: JCGM 101:2008, clause 5, propagation of distributions, here in closed form (clause from memory).
    /// </remarks>
    public Measured<Length> HeightSpread => TiltSpread.OfPredicted(_level.SlopeX, _level.SlopeY, Slopes, _width, _depth, _measured.DegreesOfFreedom);

    private SlopeCovariance Slopes
    {
        get
        {
            SlopeCovariance slopes = _measured.SlopeCovariance;
            double xx = slopes.X, yy = slopes.Y, xy = slopes.Both;
            foreach (Place error in _errors)
            {
                (double gx, double gy) = _supports.Gradient(error);
                xx += error.Weight * gx * gx;
                yy += error.Weight * gy * gy;
                xy += error.Weight * gx * gy;
            }

            return new SlopeCovariance(xx, yy, xy);
        }
    }

    /// <summary>Height at a place after the turns, positive upwards.</summary>
    /// <param name="x">Position along x.</param>
    /// <param name="y">Position along y.</param>
    /// <returns>The height: the same everywhere on a bed that becomes level, with an uncertainty that is not.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public Measured<Length> HeightAt(Length x, Length y)
    {
        double px = Guard.Finite(x.Meters, nameof(x));
        double py = Guard.Finite(y.Meters, nameof(y));
        double variance = _measured.HeightCovariance(px, py, px, py);
        foreach (Place error in _errors)
        {
            double influence = _supports.Influence(px, py, error);
            variance += error.Weight * influence * influence;
        }

        if (_removed is not null)
        {
            double rest = _removed.Rest(px, py);
            variance += rest * rest * _removed.Variance;
        }

        return Measured<Length>.FromSi(_level.At(px, py), Math.Sqrt(variance), _measured.DegreesOfFreedom);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>What is left of the tilt.</returns>
    public override string ToString() => $"level to {HeightSpread}";
}
