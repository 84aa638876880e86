namespace CommissioningPass.Pictures;

/// <summary>Which drawing belongs to which data.</summary>
internal static class Drawing
{
    internal static Figure Of(PictureData data) => data switch
    {
        TensionWindowData window => TensionWindowDrawing.Draw(window),
        PluckData pluck => PluckDrawing.Draw(pluck),
        BedPlanData plan => BedPlanDrawing.Draw(plan),
        SurfaceData surface => SurfaceDrawing.Draw(surface),
        SpectrumData spectrum => SpectrumDrawing.Draw(spectrum),
        ResidualData residual => ResidualDrawing.Draw(residual),
        FitData fit => FitDrawing.Draw(fit),
        _ => throw new ArgumentException($"There is no drawing for {data.GetType().Name}.", nameof(data)),
    };
}
