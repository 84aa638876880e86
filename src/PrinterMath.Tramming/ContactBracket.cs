namespace PrinterMath.Tramming;

/// <summary>What trials leave: the lowest clear and the highest touching height, and the place the last trial was made at.</summary>
internal readonly record struct ContactBracket(double? Clear, double? Touching, double? Last, int PassCells, bool PassBegins)
{
    internal ContactBracket With(ContactTrial trial, int finerCells)
    {
        double h = trial.HeightMeters;
        return trial.Touches
            ? new ContactBracket(Clear, Math.Max(Touching ?? h, h), h, finerCells, true)
            : this with { Clear = Math.Min(Clear ?? h, h), Last = h, PassBegins = false };
    }
}
