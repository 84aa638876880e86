namespace WorkshopSimulator;

/// <summary>A mode in motion: q″ + 2ζω q′ + ω² q = w·F, stepped exactly while the force F stands still.</summary>
internal sealed class OscillatorState(DampedMode mode)
{
    private readonly double _omega = 2 * Math.PI * mode.FrequencyHertz;
    private double _place;
    private double _speed;

    internal double AccelerationUnder(double force) =>
        (mode.Weight * force) - (2 * mode.DampingRatio * _omega * _speed) - (_omega * _omega * _place);

    /// <summary>Moves on by any time; about the place of rest under the force, place and speed turn and shrink together.</summary>
    internal void Advance(double seconds, double force)
    {
        double rest = mode.Weight * force / (_omega * _omega);
        double decay = mode.DampingRatio * _omega;
        double turn = _omega * Math.Sqrt(1 - (mode.DampingRatio * mode.DampingRatio));
        double place = _place - rest;
        double shrink = Math.Exp(-decay * seconds);
        (double sine, double cosine) = Math.SinCos(turn * seconds);
        _place = rest + (shrink * ((place * cosine) + ((_speed + (decay * place)) / turn * sine)));
        _speed = shrink * ((_speed * cosine) - (((decay * _speed) + (_omega * _omega * place)) / turn * sine));
    }
}
