using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The thread of an adjusting screw: its lead, the travel in one full turn, and its hand.</summary>
/// <remarks>Lead is pitch times the number of starts; the two are the same for ordinary screws.</remarks>
/// <example><code>ScrewThread thread = ScrewThread.IsoCoarse("M4");</code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ScrewThread
{
    private ScrewThread(Measured<Length> lead, Handedness hand)
    {
        Lead = lead;
        Hand = hand;
    }

    /// <summary>Travel in one full turn, greater than zero.</summary>
    public Measured<Length> Lead { get; }

    /// <summary>Right-hand or left-hand.</summary>
    public Handedness Hand { get; }

    /// <summary>A single-start thread of ISO metric coarse pitch, taken as exact.</summary>
    /// <param name="designation">One of <see cref="ThreadPitch.Designations"/>, for example <c>M3</c>.</param>
    /// <param name="hand">Right-hand if not stated.</param>
    /// <returns>The thread.</returns>
    /// <exception cref="ArgumentException">The designation is not known.</exception>
    public static ScrewThread IsoCoarse(string designation, Handedness hand = Handedness.Right) =>
        new(Measured.Exact(ThreadPitch.IsoCoarse(designation)), hand);

    /// <summary>A thread of a nominal lead, taken as exact.</summary>
    /// <param name="lead">Travel in one turn, greater than zero.</param>
    /// <param name="hand">Right-hand if not stated.</param>
    /// <returns>The thread.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The lead is not finite and positive.</exception>
    public static ScrewThread FromLead(Length lead, Handedness hand = Handedness.Right) =>
        new(Measured.Exact(Length.FromMeters(Guard.Positive(lead.Meters, nameof(lead)))), hand);

    /// <summary>A thread whose lead was measured.</summary>
    /// <param name="lead">Travel in one turn, greater than zero.</param>
    /// <param name="hand">Right-hand if not stated.</param>
    /// <returns>The thread.</returns>
    /// <exception cref="ArgumentException">The lead was never measured.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The lead is not positive.</exception>
    public static ScrewThread FromLead(Measured<Length> lead, Handedness hand = Handedness.Right)
    {
        if (!lead.HasValue)
        {
            throw Guard.Refused(nameof(lead), "lead was never measured.");
        }

        Guard.Positive(lead.SiValue, nameof(lead));
        return new ScrewThread(lead, hand);
    }

    /// <summary>What turning clockwise does to the bed, from how the screw is built in.</summary>
    /// <param name="from">Where the hand is; clockwise is as seen from there.</param>
    /// <param name="turned">What the hand turns.</param>
    /// <returns>Whether the bed comes up or goes down.</returns>
    /// <remarks>
    /// A right-hand part turned clockwise moves away from the hand along its mate. A nut held by the frame cannot, so its stud, and the bed
    /// with it, comes towards the hand. Trying it by a quarter turn is as good: state what was seen.
    /// </remarks>
    public BedMotion Clockwise(HandPosition from, TurnedPart turned)
    {
        bool awayFromHand = (Hand == Handedness.Right) == (turned == TurnedPart.TravelsWithBed);
        return awayFromHand == (from == HandPosition.BelowBed) ? BedMotion.Raises : BedMotion.Lowers;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Lead and hand.</returns>
    public override string ToString() => $"{Lead} per turn, {(Hand == Handedness.Right ? "right" : "left")}-hand";
}
