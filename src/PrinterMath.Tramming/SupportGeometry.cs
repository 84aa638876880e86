namespace PrinterMath.Tramming;

/// <summary>Checks that supports hold a plate: distinct and not in one line.</summary>
internal static class SupportGeometry
{
    /// <summary>Supports nearer to one line than this fraction of their extent would turn millimetres at a screw into centimetres at the edge.</summary>
    private const double LeastWidth = 0.01;

    internal static PrincipalAxes Check(AdjustingScrew[] screws, string parameter)
    {
        for (int i = 0; i < screws.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (string.Equals(screws[i].Name, screws[j].Name, StringComparison.Ordinal))
                {
                    throw Guard.Refused(parameter, $"Two screws are called '{screws[i].Name}'; names must be unique.");
                }
            }
        }

        Span<Place> places = stackalloc Place[screws.Length];
        for (int i = 0; i < places.Length; i++)
        {
            places[i] = new Place(screws[i].XMeters, screws[i].YMeters, 1);
        }

        var axes = PrincipalAxes.Of(places);
        return axes.LongestAcross > LeastWidth * axes.LongestAlong
            ? axes
            : throw Guard.Refused(
                parameter,
                FormattableString.Invariant($"The {screws.Length} screws stand within {axes.LongestAcross * 1e3:0.###} mm of one line over {2 * axes.LongestAlong * 1e3:0.#} mm; they cannot level a bed across it."));
    }
}
