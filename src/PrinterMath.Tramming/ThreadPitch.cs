using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>Pitches of ISO metric screw threads: how far a single-start screw travels in one turn.</summary>
/// <remarks>Source: ISO 261:1998, ISO general purpose metric screw threads, general plan, coarse pitches, M2 to M8 (values as in public tables of that standard).</remarks>
/// <example><code>Length pitch = ThreadPitch.IsoCoarse("M3"); // 0.5 mm</code></example>
public static class ThreadPitch
{
    private static readonly (string Designation, double Millimeters)[] Coarse =
        [("M2", 0.4), ("M2.5", 0.45), ("M3", 0.5), ("M4", 0.7), ("M5", 0.8), ("M6", 1), ("M8", 1.25)];

    /// <summary>The designations known here, in order of diameter.</summary>
    public static IReadOnlyList<string> Designations => [.. Coarse.Select(thread => thread.Designation)];

    /// <summary>The coarse pitch of a thread, by its designation.</summary>
    /// <param name="designation">For example <c>M3</c>; one of <see cref="Designations"/>.</param>
    /// <returns>The pitch.</returns>
    /// <exception cref="ArgumentException">The designation is not known here.</exception>
    public static Length IsoCoarse(string designation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(designation);
        foreach ((string known, double millimeters) in Coarse)
        {
            if (string.Equals(known, designation, StringComparison.OrdinalIgnoreCase))
            {
                return Length.FromMillimeters(millimeters);
            }
        }

        throw Guard.Refused(nameof(designation), $"'{designation}' is not one of {string.Join(", ", Designations)}; give the lead itself.");
    }
}
