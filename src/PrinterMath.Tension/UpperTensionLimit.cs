namespace PrinterMath.Tension;

/// <summary>What forbids more tension.</summary>
public enum UpperTensionLimit
{
    /// <summary>The tight side reaches the belt's working strength.</summary>
    BeltStrength,

    /// <summary>The pull of both strands reaches the radial load of the motor shaft.</summary>
    MotorShaft,

    /// <summary>The pull on an idler reaches its load.</summary>
    Idler,
}
