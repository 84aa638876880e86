namespace PrinterMath.Tension;

/// <summary>A circle that the belt touches: radius positive when its centre lies left of the belt, negative when right, zero at an end.</summary>
internal sealed class BeltNode
{
    internal BeltNode(HeadPosition place, RidesOn ridesOn, double signedRadius)
    {
        Base = place;
        RidesOn = Enum.IsDefined(ridesOn) ? ridesOn : throw Guard.Out(nameof(ridesOn), ridesOn, "one of the named parts");
        SignedRadius = signedRadius;
    }

    internal HeadPosition Base { get; }

    internal RidesOn RidesOn { get; }

    internal double SignedRadius { get; }

    internal double Radius => Math.Abs(SignedRadius);

    internal double X(HeadPosition head) => Base.MetersX + (RidesOn == RidesOn.Head ? head.MetersX : 0);

    internal double Y(HeadPosition head) => Base.MetersY + (RidesOn == RidesOn.Frame ? 0 : head.MetersY);

    internal HeadPosition Mirrored(double axis) => new((RidesOn == RidesOn.Head ? 0 : 2 * axis) - Base.MetersX, Base.MetersY);
}
