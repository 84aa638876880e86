using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>One height, positive upwards, and whether there was contact.</summary>
/// <remarks>Equality by value; the default is "clear at height zero".</remarks>
/// <example><code>ContactTrial trial = ContactTrial.At(Length.FromMillimeters(0.15), ContactOutcome.Clear);</code></example>
public readonly record struct ContactTrial
{
    private ContactTrial(double height, ContactOutcome outcome)
    {
        HeightMeters = height;
        Outcome = outcome;
    }

    /// <summary>The height that was set, approached from above.</summary>
    public Length Height => Length.FromMeters(HeightMeters);

    /// <summary>What was found there.</summary>
    public ContactOutcome Outcome { get; }

    internal double HeightMeters { get; }

    internal bool Touches => Outcome == ContactOutcome.Touching;

    /// <summary>A trial.</summary>
    /// <param name="height">The height that was set.</param>
    /// <param name="outcome">What was found.</param>
    /// <returns>The trial.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is not finite, or the outcome is not one of those named.</exception>
    public static ContactTrial At(Length height, ContactOutcome outcome) => Enum.IsDefined(outcome)
        ? new ContactTrial(Guard.Finite(height.Meters, nameof(height)), outcome)
        : throw Guard.Out(nameof(outcome), outcome, "Clear or Touching");

    /// <summary>Invariant text.</summary>
    /// <returns>Outcome and height.</returns>
    public override string ToString() => FormattableString.Invariant($"{(Touches ? "touching" : "clear")} at {HeightMeters * 1e3:0.#####} mm");
}
