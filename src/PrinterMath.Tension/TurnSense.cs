namespace PrinterMath.Tension;

/// <summary>Which way to turn a tensioner.</summary>
public enum TurnSense
{
    /// <summary>Not at all: the change is smaller than what is known.</summary>
    Leave,

    /// <summary>So that the belt gets tighter.</summary>
    Tighten,

    /// <summary>So that the belt gets slacker.</summary>
    Slacken,
}
