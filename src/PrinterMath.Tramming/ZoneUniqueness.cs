namespace PrinterMath.Tramming;

/// <summary>Whether a minimum zone in z can be tilted without widening it.</summary>
internal static class ZoneUniqueness
{
    private const double Zero = 1e-9;

    /// <summary>
    /// Points with a share in the reference must stay on their limits. Four of them pin the zone; three lie in one line, about which it may turn unless other points on the limits
    /// stand in the way on both sides; two share one place, and the zone is pinned when no direction of tilt is free.
    /// </summary>
    internal static bool IsUnique(ZoneFrame frame, MinimaxPlane zone)
    {
        int[] pins = [.. Enumerable.Range(0, 4).Where(k => zone.Levels[k] > Zero).Select(k => zone.Reference[k]).Distinct()];
        if (frame.Scale == 0 || pins.Length >= 4)
        {
            return true;
        }

        // Tilts (da, db, dc) that leave the pins in place, as directions (du, dv) of the gradient about the first pin.
        double u0 = frame.U[pins[0]], v0 = frame.V[pins[0]];
        double along = 0, across = 0;
        foreach (int pin in pins)
        {
            double du = frame.U[pin] - u0, dv = frame.V[pin] - v0;
            (along, across) = (du * du) + (dv * dv) > (along * along) + (across * across) ? (du, dv) : (along, across);
        }

        bool isPlace = (along * along) + (across * across) < Zero * Zero;
        var blocked = new List<double>();
        for (int i = 0; i < frame.R.Length; i++)
        {
            double distance = frame.R[i] - zone.Height(i);
            if (Math.Abs(distance) < zone.HalfWidth * (1 - Zero))
            {
                continue;
            }

            double du = frame.U[i] - u0, dv = frame.V[i] - v0;
            double sign = distance > 0 ? 1 : -1;
            if (isPlace ? (du * du) + (dv * dv) > Zero * Zero : Math.Abs((along * dv) - (across * du)) > Zero)
            {
                blocked.Add(isPlace ? Math.Atan2(sign * dv, sign * du) : sign * Math.Sign((along * dv) - (across * du)));
            }
        }

        return isPlace ? Surrounds(blocked) : blocked.Contains(1) && blocked.Contains(-1);
    }

    /// <summary>Whether directions leave no half-plane free.</summary>
    private static bool Surrounds(List<double> directions)
    {
        directions.Sort();
        for (int i = 0; i < directions.Count; i++)
        {
            double next = i + 1 < directions.Count ? directions[i + 1] : directions[0] + (2 * Math.PI);
            if (next - directions[i] > Math.PI - Zero)
            {
                return false;
            }
        }

        return directions.Count > 2;
    }
}
