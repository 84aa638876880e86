using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The heights a contact search may try, whole finest steps below its start, and the rule that picks the next.</summary>
internal sealed class ContactGrid
{
    private const double LargestOvershoot = 1e-3;
    private const double LongestDescent = 0.1;
    private const int MostSteps = 10_000;
    private const int FinerBy = 4;

    /// <summary>Rounding of a height in units of the finest step.</summary>
    private const double Rounding = 1e-6;

    private readonly double _start;
    private readonly double _lowest;
    private readonly double _step;
    private readonly double _backlash;
    private readonly int _coarse;
    private readonly ContactRefinement _refinement;

    private ContactGrid(double start, double lowest, double step, int coarse, double overshoot, double backlash, double error, ContactRefinement refinement)
    {
        _start = start;
        _lowest = lowest;
        _step = step;
        _coarse = coarse;
        _backlash = backlash;
        _refinement = refinement;
        Overshoot = overshoot;
        ReadingError = error;
    }

    internal double Overshoot { get; }

    internal double ReadingError { get; }

    internal double Lowest => _lowest;

    internal int MostTrials
    {
        get
        {
            int trials = 1 + (int)Math.Ceiling(((_start - _lowest) / (_coarse * _step)) - Rounding);
            for (int cells = _coarse; cells > 1;)
            {
                int finer = _refinement == ContactRefinement.Bisect ? (cells + 1) / 2 : Finer(cells);
                trials += _refinement == ContactRefinement.Bisect ? 1 : 1 + ((cells + finer - 1) / finer);
                cells = finer;
            }

            // the start and the lowest height need not be whole steps apart: one trial more in the last cell
            return trials + 1;
        }
    }

    internal static ContactGrid Of(Length start, Length lowest, ContactSearchOptions options)
    {
        double high = Guard.Finite(start.Meters, nameof(start));
        double low = Guard.Finite(lowest.Meters, nameof(lowest));
        if (!(low < high && high - low <= LongestDescent))
        {
            throw Guard.Out(nameof(lowest), lowest, FormattableString.Invariant($"below start, {high * 1e3} mm, by at most {LongestDescent * 1e3} mm; heights are lengths, check their unit"));
        }

        double overshoot = options.AllowedOvershoot.Meters;
        if (!(overshoot >= 1e-6 && overshoot <= LargestOvershoot))
        {
            throw Guard.Out("options.AllowedOvershoot", options.AllowedOvershoot, "from 1 µm to 1 mm: a nozzle driven farther into the bed damages both; check the unit");
        }

        double error = options.LargestReadingError.Meters;
        if (!(error >= 0 && error < overshoot))
        {
            throw Guard.Out("options.LargestReadingError", options.LargestReadingError, "not negative and less than the allowed overshoot");
        }

        double step = options.FinestStep.Meters;
        double widest = (overshoot - error) * (1 + 1e-9);
        if (!(step >= 1e-7 && step <= widest))
        {
            throw Guard.Out("options.FinestStep", options.FinestStep, FormattableString.Invariant($"from 0.1 µm to {widest * 1e3:0.#####} mm, the allowed overshoot less the error of a reading; check the unit"));
        }

        double backlash = Guard.Between(options.Backlash.Meters, 0, 5e-3, "options.Backlash");
        if (!Enum.IsDefined(options.Refinement))
        {
            throw Guard.Out("options.Refinement", options.Refinement, "Bisect or FinerSteps");
        }

        int coarse = Math.Max(1, (int)Math.Floor((widest / step) + 1e-9));
        return (high - low) / (coarse * step) <= MostSteps
            ? new ContactGrid(high, low, step, coarse, overshoot, backlash, error, options.Refinement)
            : throw Guard.Out(nameof(lowest), lowest, FormattableString.Invariant($"within {MostSteps} steps of {coarse * step * 1e3:0.#####} mm below start; begin nearer to the surface"));
    }

    internal ContactBracket After(ContactBracket bracket, ContactTrial trial) =>
        bracket.With(trial, Finer(bracket.Touching is null ? _coarse : bracket.PassCells));

    internal ContactSearchState StateOf(ContactBracket bracket) => bracket switch
    {
        { Clear: null, Touching: null } => ContactSearchState.Running,
        { Clear: null } => ContactSearchState.StartTouches,
        { Clear: double clear, Touching: null } => clear <= _lowest + (Rounding * _step) ? ContactSearchState.NoContact : ContactSearchState.Running,
        { Clear: double clear, Touching: double touching } =>
            touching - clear >= (2 * ReadingError) - (Rounding * _step) ? ContactSearchState.Contradictory
            : clear - touching <= _step * (1 + Rounding) ? ContactSearchState.Found
            : ContactSearchState.Running,
    };

    internal ContactMove MoveFrom(ContactBracket bracket)
    {
        double next = NextHeight(bracket);
        bool retract = bracket.Last is not double last || next >= last;
        return new ContactMove(next, retract ? next + _backlash + (_coarse * _step) : null);
    }

    private static int Finer(int cells) => Math.Max(1, cells / FinerBy);

    private double NextHeight(ContactBracket bracket)
    {
        if (bracket.Clear is not double clear)
        {
            return _start;
        }

        double coarse = _coarse * _step;
        if (bracket.Touching is not double touching)
        {
            return Math.Max(_lowest, OnGrid(clear - coarse));
        }

        if (clear - touching > coarse * (1 + Rounding))
        {
            return OnGrid(clear - coarse);
        }

        return _refinement == ContactRefinement.Bisect
            ? Inside((clear + touching) / 2, touching, clear)
            : bracket.PassBegins ? clear : Inside(FinerBelow(bracket.PassCells, touching, clear), touching, clear);
    }

    /// <summary>One step of the pass below the clear height; a finer one where that would reach the touching height.</summary>
    private double FinerBelow(int cells, double touching, double clear)
    {
        while (cells > 1 && clear - (cells * _step) <= touching + (Rounding * _step))
        {
            cells = Finer(cells);
        }

        return clear - (cells * _step);
    }

    /// <summary>The height on the grid at or just above the one wanted.</summary>
    private double OnGrid(double height) => _start - (Math.Floor(((_start - height) / _step) + Rounding) * _step);

    /// <summary>A height on the grid strictly between two others more than a step apart.</summary>
    private double Inside(double wanted, double touching, double clear)
    {
        double height = OnGrid(wanted);
        height = height >= clear - (Rounding * _step) ? height - _step : height;
        return height > touching + (Rounding * _step) ? height : (touching + clear) / 2;
    }
}
