namespace PrinterMath.Tramming.Tests.Simulation;

/// <summary>A vertical axis with play: the nozzle follows the commanded height when going down and lags behind by the play when going up. It keeps the lowest place it has been.</summary>
internal sealed class SlackAxis(double at, double play)
{
    internal double Nozzle { get; private set; } = at;

    internal double Deepest { get; private set; } = at;

    internal void MoveTo(double command)
    {
        Nozzle = Nozzle > command ? command : Nozzle < command - play ? command - play : Nozzle;
        Deepest = Math.Min(Deepest, Nozzle);
    }
}
