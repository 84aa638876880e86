using PrinterMath.Measurement;
using PrinterMath.Resonance;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>A mode to be marked.</summary>
/// <param name="Number">Its number in the table.</param>
/// <param name="Mode">The mode.</param>
/// <param name="LeftOut">Whether it swings too little to count in the choice of a sequence.</param>
internal sealed record ModeMark(int Number, Mode Mode, bool LeftOut)
{
    internal double Hertz => Mode.Frequency.Value.Hertz;

    internal string Label => FormattableString.Invariant($"{Number}: {Hertz:0.0} Hz");

    /// <summary>Ends of the 95 % interval.</summary>
    internal (double Lower, double Upper) Band
    {
        get
        {
            ExpandedInterval<Frequency> interval = Mode.Frequency.Interval();
            return (interval.Lower.Hertz, interval.Upper.Hertz);
        }
    }
}
