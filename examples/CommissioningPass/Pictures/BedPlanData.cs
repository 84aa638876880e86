namespace CommissioningPass.Pictures;

/// <summary>The bed from above: its screws and where it was probed, in millimetres.</summary>
internal sealed record BedPlanData(IReadOnlyList<SupportMark> Supports, IReadOnlyList<(double X, double Y)> Probed) : PictureData;
