namespace PrinterMath.Tension;

/// <summary>Codes of the findings about belt paths, drives and tensioners.</summary>
public static class DriveFindings
{
    /// <summary>Caution: the belt's length as drawn changes with the head, so its tension would too.</summary>
    public const string LengthVaries = "path.length-varies";

    /// <summary>Blocking: no place within the travel gives the spans that were asked for.</summary>
    public const string NoParkingPlace = "path.no-parking-place";

    /// <summary>Blocking: the least tension that serves the acceleration is above the largest that belt and bearings stand.</summary>
    public const string EmptyWindow = "window.empty";

    /// <summary>Caution: the maker's radial load of the motor shaft was not stated, and the least tension is above a typical one.</summary>
    public const string ShaftLoadUnknown = "window.shaft-load-unknown";

    /// <summary>Caution: the uncertainties of both limits leave open whether any tension serves.</summary>
    public const string UndecidedWindow = "window.undecided";

    /// <summary>Blocking: the transmitted force alone is too much for belt or bearings, before any tension at rest.</summary>
    public const string Overloaded = "window.overloaded";

    /// <summary>Blocking: at this speed the usable torque does not even overcome friction, so there is no acceleration to give.</summary>
    public const string NoTorque = "motor.no-torque";

    /// <summary>Blocking: the turns between the readings do not tell the two tensioners apart.</summary>
    public const string PoorlyDetermined = "tensioner.poorly-determined";

    /// <summary>Blocking: the readings do not show at 95 % that each screw tightens its belt.</summary>
    public const string NoGain = "tensioner.no-gain";

    /// <summary>Caution: more than three readings, and they do not lie on a plane: a belt settles, a screw slips, or a pluck was misheard.</summary>
    public const string ReadingsDisagree = "tensioner.readings-disagree";

    /// <summary>Blocking: the two tension differences are too alike to show what they do to squareness.</summary>
    public const string DifferencesAlike = "racking.differences-alike";

    /// <summary>Blocking: squareness did not change by more than it is uncertain; the beam is stiffer than the readings can show.</summary>
    public const string RackingNotSeen = "racking.not-seen";

    /// <summary>Caution: no place was read twice from one side, so the scatter of the readings is not in the uncertainty.</summary>
    public const string ScatterUnknown = "reversal.scatter-unknown";
}
