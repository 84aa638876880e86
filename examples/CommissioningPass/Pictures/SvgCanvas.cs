using System.Globalization;
using System.Xml.Linq;

namespace CommissioningPass.Pictures;

/// <summary>
/// A small writer of inline SVG: shapes and text in the order in which they were asked for, so the same picture gives the same bytes. A plotting
/// package was tried: it draws text letter by letter in whichever serif font it finds, and its bytes change from run to run.
/// </summary>
internal sealed class SvgCanvas
{
    /// <summary>As wide as a phone's column, so that a unit is about a pixel there.</summary>
    internal const double Width = 360;

    internal const double TextSize = 12;

    /// <summary>Width of a letter of a wide sans-serif font, to keep labels apart.</summary>
    private const double LetterWidth = 7;

    private readonly List<XElement> _shapes = [];

    internal static double WidthOf(string text) => text.Length * LetterWidth;

    /// <summary>The text, cut so that it fits.</summary>
    internal static string Fit(string text, double width) =>
        WidthOf(text) <= width ? text : text[..Math.Max(1, (int)(width / LetterWidth) - 1)].TrimEnd() + "…";

    internal void Line(double x1, double y1, double x2, double y2, string colour, double width = 1, string? dash = null) => Add(
        "line", ("x1", N(x1)), ("y1", N(y1)), ("x2", N(x2)), ("y2", N(y2)), ("stroke", colour), ("stroke-width", N(width)), ("stroke-dasharray", dash));

    internal void Polyline(IEnumerable<(double X, double Y)> points, string colour, double width = 1.5) => Add(
        "polyline", ("points", Points(points)), ("fill", "none"), ("stroke", colour), ("stroke-width", N(width)), ("stroke-linejoin", "round"));

    internal void Polygon(IEnumerable<(double X, double Y)> points, string fill) => Add("polygon", ("points", Points(points)), ("fill", fill));

    internal void Rectangle(double x, double y, double width, double height, string fill, string? stroke = null) => Add(
        "rect", ("x", N(x)), ("y", N(y)), ("width", N(width)), ("height", N(height)), ("fill", fill), ("stroke", stroke));

    internal void Circle(double x, double y, double radius, string fill, string? stroke = null) => Add(
        "circle", ("cx", N(x)), ("cy", N(y)), ("r", N(radius)), ("fill", fill), ("stroke", stroke), ("stroke-width", stroke is null ? null : "1.5"));

    internal void Cross(double x, double y, double reach, string colour)
    {
        Line(x - reach, y - reach, x + reach, y + reach, colour, 2);
        Line(x - reach, y + reach, x + reach, y - reach, colour, 2);
    }

    /// <summary>Text on its base line.</summary>
    internal void Text(double x, double y, string text, TextAlign align = TextAlign.Left, string colour = Palette.Ink, bool bold = false)
    {
        string? anchor = align switch
        {
            TextAlign.Middle => "middle",
            TextAlign.Right => "end",
            _ => null,
        };
        Add("text", ("x", N(x)), ("y", N(y)), ("text-anchor", anchor), ("fill", colour), ("font-weight", bold ? "bold" : null));
        _shapes[^1].Add(text);
    }

    /// <summary>The picture, with what it shows in words for those who do not see it.</summary>
    internal XElement Finish(double height, string label)
    {
        var svg = new XElement(
            "svg",
            new XAttribute("role", "img"),
            new XAttribute("aria-label", label),
            new XAttribute("viewBox", $"0 0 {N(Width)} {N(height)}"),
            new XAttribute("font-family", "system-ui, sans-serif"),
            new XAttribute("font-size", N(TextSize)));
        svg.Add(new XElement("rect", new XAttribute("width", N(Width)), new XAttribute("height", N(height)), new XAttribute("fill", Palette.Paper)));
        svg.Add(_shapes);
        return svg;
    }

    private static string N(double number)
    {
        string text = number.ToString("0.#", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    private static string Points(IEnumerable<(double X, double Y)> points) => string.Join(' ', points.Select(point => $"{N(point.X)},{N(point.Y)}"));

    private void Add(string name, params (string Name, string? Value)[] attributes) => _shapes.Add(new XElement(
        name, attributes.Where(attribute => attribute.Value is not null).Select(attribute => new XAttribute(attribute.Name, attribute.Value!))));
}
