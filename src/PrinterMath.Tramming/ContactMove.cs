using System.Diagnostics;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What to do next in a contact search: retract if told so, then come down to a height and see.</summary>
/// <remarks>Caution: come down slowly; a hot nozzle and a hot bed burn; keep fingers out of the gap.</remarks>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ContactMove
{
    private readonly double _height;
    private readonly double _retract;
    private readonly bool _retracts;

    internal ContactMove(double height, double? retract)
    {
        _height = height;
        _retracts = retract is not null;
        _retract = retract ?? height;
    }

    /// <summary>Height to try, positive upwards, always approached from above.</summary>
    public Length Height => Length.FromMeters(_height);

    /// <summary>Height to retract to first, farther above <see cref="Height"/> than the backlash; null when the descent just goes on.</summary>
    public Length? RetractTo => _retracts ? Length.FromMeters(_retract) : null;

    /// <summary>Invariant text.</summary>
    /// <returns>The move.</returns>
    public override string ToString() => _retracts
        ? FormattableString.Invariant($"retract to {_retract * 1e3:0.#####} mm, then down to {_height * 1e3:0.#####} mm")
        : FormattableString.Invariant($"down to {_height * 1e3:0.#####} mm");
}
