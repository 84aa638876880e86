using System.Xml.Linq;

namespace CommissioningPass.Pictures;

/// <summary>A drawn picture.</summary>
/// <param name="Svg">The drawing, with a label that holds its numbers.</param>
/// <param name="Caption">What it shows.</param>
internal sealed record Figure(XElement Svg, string Caption);
