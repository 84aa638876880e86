using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A support whose height can be changed: by hand (<see cref="AdjustingScrew"/>) or by a motor (<see cref="PoweredScrew"/>).</summary>
public abstract class AdjustableSupport : BedSupport
{
    private readonly Place[] _place;

    private protected AdjustableSupport(string name, Length x, Length y)
        : base(name) =>
        _place = [new Place(Guard.Finite(x.Meters, nameof(x)), Guard.Finite(y.Meters, nameof(y)), 1)];

    /// <summary>Position along x.</summary>
    public Length X => Length.FromMeters(XMeters);

    /// <summary>Position along y.</summary>
    public Length Y => Length.FromMeters(YMeters);

    internal double XMeters => _place[0].X;

    internal double YMeters => _place[0].Y;

    /// <summary>Height in one turn of the screw.</summary>
    internal abstract Measured<Length> TurnLead { get; }

    /// <summary>The step to which changes are rounded, in metres; zero where they are not.</summary>
    internal virtual double Grain => 0;

    internal sealed override ReadOnlySpan<Place> Places => _place;

    /// <summary>Invariant text.</summary>
    /// <returns>Name and place.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name} at ({XMeters * 1e3:0.###}, {YMeters * 1e3:0.###}) mm");
}
