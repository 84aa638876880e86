namespace PrinterMath.Tension.Tests;

/// <summary>Random numbers of a simulated case: neighbouring seeds and strata share nothing.</summary>
/// <remarks>
/// <see cref="Random"/> turns neighbouring seeds into sequences that go along with each other; the seed is scrambled first.
/// Source: Steele, Lea and Flood 2014, Fast splittable pseudorandom number generators, OOPSLA, for SplitMix64 (constants from memory).
/// </remarks>
internal static class SeededRandom
{
    internal static Random For(int seed, int stratum)
    {
        ulong z = (((ulong)(uint)seed << 32) | (uint)stratum) + 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return new Random((int)((z ^ (z >> 31)) >> 33));
    }
}
