namespace PrinterMath.Tramming;

/// <summary>What keeps further passes from reaching a limit.</summary>
public enum ForecastLimit
{
    /// <summary>Nothing: they reach it.</summary>
    None,

    /// <summary>The probe's noise: level beds too look tilted by more than the limit allows.</summary>
    ProbeNoise,

    /// <summary>How precisely a hand sets a turn.</summary>
    TurnSetting,

    /// <summary>How little is known of what a turn does.</summary>
    Response,
}
