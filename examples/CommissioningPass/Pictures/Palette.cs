namespace CommissioningPass.Pictures;

/// <summary>Colours that people with any kind of colour vision tell apart; none carries a meaning alone.</summary>
/// <remarks>
/// Source of the lines: M. Okabe and K. Ito, 2008, Color Universal Design (from memory). Source of the scale: J. R. Nuñez, C. R. Anderton and R. S. Renslow,
/// 2018, Optimizing colormaps with consideration for color vision deficiency, ten even steps of its map (from memory).
/// </remarks>
internal static class Palette
{
    internal const string Ink = "#1a1a1a";
    internal const string Grey = "#595959";
    internal const string Faint = "#d9d9d9";
    internal const string Paper = "#ffffff";
    internal const string Blue = "#0072b2";
    internal const string Vermilion = "#d55e00";
    internal const string Green = "#009e73";
    internal const string Orange = "#e69f00";

    private static readonly (int Red, int Green, int Blue)[] Steps =
    [
        (0x00, 0x22, 0x4e), (0x12, 0x35, 0x70), (0x3b, 0x49, 0x6c), (0x57, 0x5d, 0x6d), (0x70, 0x71, 0x73),
        (0x8a, 0x86, 0x78), (0xa5, 0x9c, 0x74), (0xc3, 0xb3, 0x69), (0xe1, 0xcc, 0x55), (0xfe, 0xe8, 0x38),
    ];

    /// <summary>Colour of a share from 0, dark blue, to 1, yellow; lightness rises all the way.</summary>
    internal static string OfShare(double share)
    {
        double place = Math.Clamp(share, 0, 1) * (Steps.Length - 1);
        int below = Math.Min((int)place, Steps.Length - 2);
        double rest = place - below;
        (int red, int green, int blue) = Steps[below];
        (int red2, int green2, int blue2) = Steps[below + 1];
        return $"#{Mix(red, red2, rest):x2}{Mix(green, green2, rest):x2}{Mix(blue, blue2, rest):x2}";
    }

    /// <summary>White or black, whichever is read better on the colour of a share.</summary>
    internal static string TextOn(double share) => share < 0.5 ? Paper : "#000000";

    private static int Mix(int from, int to, double rest) => (int)Math.Round(from + ((to - from) * rest));
}
