using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>What is known beforehand about the probe and the screws when a sequence of passes is judged.</summary>
/// <remarks>
/// The prior of the response, one normal distribution for each number: lead of screw k, mean P and variance (<see cref="RelativeLeadUncertainty"/>·P)² + u²(P); what a turn of k
/// does at another screw, mean 0 and standard deviation <see cref="CrossCoupling"/>·P. Every turn made carries a setting error of mean 0 and standard deviation <see cref="TurnUncertainty"/>.
/// </remarks>
/// <example><code>var options = new TrammingSequenceOptions { ProbeRepeatability = Length.FromMicrometers(4) };</code></example>
public sealed record TrammingSequenceOptions
{
    /// <summary>Standard deviation of one height reading, known beforehand; serves every point that carries no uncertainty of its own.</summary>
    /// <value>Greater than zero; null by default: judged from what planes and shapes leave of the readings.</value>
    public Length? ProbeRepeatability { get; init; }

    /// <summary>How far the effective lead of a screw may be from the stated one, a relative standard uncertainty on top of the thread's own.</summary>
    /// <value>From 0 to 1; 0.05 by default (common practice, no source).</value>
    public double RelativeLeadUncertainty { get; init; } = 0.05;

    /// <summary>How much a turn of one screw may move the bed at another, a standard deviation as a ratio of its lead.</summary>
    /// <value>From 0 to 1; 0.02 by default (common practice, no source).</value>
    public double CrossCoupling { get; init; } = 0.02;

    /// <summary>How precisely a hand sets a turn, a standard uncertainty.</summary>
    /// <value>Zero or more; 3° by default (common practice, no source).</value>
    public Angle TurnUncertainty { get; init; } = Angle.FromDegrees(3);

    /// <summary>Motion that every screw loses when its sense is reversed, known beforehand.</summary>
    /// <remarks>Next turns are longer by what of it they first take up. Stated, it is not looked for; left out, it is looked for, and what is found serves the next turns in the same way.</remarks>
    /// <value>Zero or more; null by default: not known.</value>
    public Measured<Length>? Play { get; init; }

    /// <summary>Whether heights of all passes count from the same zero. False when the zero was found anew on the bed between passes: then only tilts are compared.</summary>
    /// <value>True by default.</value>
    public bool ZeroIsKept { get; init; } = true;

    /// <summary>Probability that a machine without fault gets any diagnosis at all, at most.</summary>
    /// <value>Greater than 0, at most 0.2; 0.05 by default.</value>
    public double FamilyWiseRisk { get; init; } = 0.05;

    /// <summary>Where the bed is to end up by the next turns.</summary>
    /// <value>By default the mean of the heights at the screws is kept.</value>
    public TrammingOptions Next { get; init; } = new();

    internal void Check()
    {
        const string Name = "options.";
        if (ProbeRepeatability is Length s)
        {
            Guard.Positive(s.Meters, Name + nameof(ProbeRepeatability));
        }

        if (Play is Measured<Length> play)
        {
            Guard.NonNegative(play.HasValue ? play.SiValue : double.NaN, Name + nameof(Play));
        }

        Guard.Between(RelativeLeadUncertainty, 0, 1, Name + nameof(RelativeLeadUncertainty));
        Guard.Between(CrossCoupling, 0, 1, Name + nameof(CrossCoupling));
        Guard.NonNegative(TurnUncertainty.Revolutions, Name + nameof(TurnUncertainty));
        Guard.Between(FamilyWiseRisk, double.Epsilon, 0.2, Name + nameof(FamilyWiseRisk));
        Guard.NotNull(Next, Name + nameof(Next));
    }
}
