using PrinterMath.Extrusion;
using PrinterMath.Measurement;

namespace CommissioningPass.Pictures;

/// <summary>A series of fits.</summary>
/// <param name="Series">What was tried and what came of it.</param>
/// <param name="Estimate">Where half of the pairs fit; null when the series does not say yet.</param>
/// <param name="Wall">Flow by a measured wall; null when none was measured.</param>
internal sealed record FitData(FitSeries Series, FitEstimate? Estimate, Measured<double>? Wall) : PictureData;
