namespace PrinterMath.Tramming;

/// <summary>What a limit allows: a·q ≤ b, with the supports whose limits it comes from (Upper at its highest, Lower at its lowest; −1 for none), and how much b grows when all limits give by one.</summary>
internal readonly record struct HalfPlane(double A1, double A2, double B, int Lower, int Upper, double Gives);
