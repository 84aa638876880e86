namespace LabChecking;

/// <summary>Numbers of an invented sheet, the same for a student on every machine: SplitMix64 (G. L. Steele, D. Lea, C. H. Flood 2014, Fast splittable pseudorandom number generators; from memory).</summary>
public sealed class Draws(int student)
{
    private ulong _state = (ulong)student;

    /// <summary>One of <paramref name="count"/> numbers in steps from the lowest on.</summary>
    public double Next(double lowest, double step, int count)
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return Math.Round(lowest + (step * ((z ^ (z >> 31)) % (ulong)count)), 4);
    }
}
