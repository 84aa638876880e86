using System.Globalization;
using PrinterMath.Measurement;

namespace PrinterMath.SurfaceMesh;

/// <summary>The sentences of the findings about thin plates.</summary>
internal static class PlateFindings
{
    internal static readonly Finding NothingLeftOver = new(
        SurfaceFindings.PlateUndetermined, FindingSeverity.Blocking, "The plate passes through all points and leaves nothing over.");

    internal static Finding Undetermined(int places) => new(
        SurfaceFindings.PlateUndetermined,
        FindingSeverity.Blocking,
        string.Create(CultureInfo.InvariantCulture, $"The {places} places are fewer than four or lie on one line: they hold no surface."),
        new FindingNumber("places", places, "1"));

    internal static Finding NotSmoothed(int places) => new(
        SurfaceFindings.PlateNotSmoothed,
        FindingSeverity.Caution,
        string.Create(CultureInfo.InvariantCulture, $"Cross-validation tells no noise from shape in {places} places: the plate passes through all of them. State the smoothing, or probe more places."),
        new FindingNumber("places", places, "1"));
}
