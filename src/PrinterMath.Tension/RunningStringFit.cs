namespace PrinterMath.Tension;

/// <summary>Least squares of (f_n/n)² = f0² + f0²·B·n² that grows by one partial at a time and starts from a guess with a width of its own.</summary>
internal struct RunningStringFit
{
    private double _s0, _s1, _s2, _t0, _t1;
    private readonly double _scale;

    internal RunningStringFit(StiffString guess, double scatter)
    {
        _scale = guess.F0 * guess.F0;
        double weightF0 = 1 / (4 * 9 * scatter * scatter);
        double spreadB = Math.Max(guess.B, 5e-5);
        double weightB = 1 / (spreadB * spreadB);
        _s0 = weightF0;
        _t0 = weightF0;
        _s2 = weightB;
        _t1 = weightB * guess.B;
        Model = guess;
    }

    internal StiffString Model { get; private set; }

    internal void Add(int n, double frequency, double sigma)
    {
        double y = frequency * frequency / (n * (double)n * _scale);
        double x = n * (double)n;
        double relative = 2 * sigma / frequency;
        double w = 1 / (y * y * relative * relative);
        _s0 += w;
        _s1 += w * x;
        _s2 += w * x * x;
        _t0 += w * y;
        _t1 += w * x * y;
        double determinant = (_s0 * _s2) - (_s1 * _s1);
        double a = ((_s2 * _t0) - (_s1 * _t1)) / determinant;
        double b = ((_s0 * _t1) - (_s1 * _t0)) / determinant;
        if (b < 0)
        {
            (a, b) = (_t0 / _s0, 0);
        }

        Model = a > 0 ? new StiffString(Math.Sqrt(a * _scale), b / a) : Model;
    }
}
