using PrinterMath.Extrusion;
using PrinterMath.Measurement;
using PrinterMath.Resonance;
using PrinterMath.SurfaceMesh;
using PrinterMath.Tension;
using PrinterMath.Tramming;
using UnitsNet;

namespace PrinterMath.Benchmarks;

/// <summary>The operations that are compared with Python: name, and a call that returns numbers to compare.</summary>
internal static class Work
{
    internal const int Places = 1_000_000;
    internal const int GridSide = 11;

    internal static Dictionary<string, Lazy<Func<double[]>>> All { get; } = new()
    {
        ["welch"] = new(() =>
        {
            SampledSignal signal = Inputs.Signal(Inputs.Vibration(192_000), Inputs.VibrationRate);
            return () => Welch.Estimate(signal).Densities.ToArray();
        }),
        ["sequences"] = new(() =>
        {
            Mode[] modes = Inputs.Modes();
            return () => [.. SequenceSearch.For(modes, new SequenceLimits { Frequencies = 150 }).Candidates.Select(c => c.WorstResidual)];
        }),
        ["sequences-wide"] = new(() =>
        {
            Mode[] modes = Inputs.WideModes();
            return () => [.. SequenceSearch.For(modes, new SequenceLimits { Frequencies = 150 }).Candidates.Select(c => c.WorstResidual)];
        }),
        ["ringdown"] = new(() =>
        {
            SampledSignal signal = Inputs.Signal(Inputs.Vibration(800), Inputs.VibrationRate);
            return () =>
            {
                Mode mode = RingDown.Fit(signal, new RingDownOptions { MostModes = 1 }).Dominant;
                return [mode.Frequency.SiValue, mode.DampingRatio.SiValue];
            };
        }),
        ["bilinear"] = new(() => Heights(BilinearModel.Through(Inputs.Grid(GridSide)))),
        ["bicubic"] = new(() => Heights(BicubicModel.Through(Inputs.Grid(GridSide)))),
        ["plate-heights"] = new(() => Heights(ThinPlateModel.Fit(Inputs.Points(15), Inputs.Stiff), 100_000)),
        ["plate-fit225"] = new(() => PlateFit(15, Inputs.Stiff)),
        ["plate-fit1024"] = new(() => PlateFit(32, Inputs.Stiff)),
        ["plate-cross-validation225"] = new(() => PlateFit(15, null)),
        ["pluck"] = new(() =>
        {
            SampledSignal signal = Inputs.Signal(Inputs.Pluck(144_000), Inputs.AudioRate);
            return () => [Pluck.Read(signal).TryGetFundamental(out Measured<Frequency> f) ? f.SiValue : 0];
        }),
        ["ideal"] = new(() => () => [IdealString.Tension(Frequency.FromHertz(150), Length.FromMillimeters(250), LinearDensity.FromGramsPerMeter(8.4)).Newtons]),
        ["pinned"] = new(() => () => [PinnedSpan.Tension(Frequency.FromHertz(150), Length.FromMillimeters(250), LinearDensity.FromGramsPerMeter(8.4), FlexuralRigidity.FromNewtonSquareMeters(2e-5)).Newtons]),
        ["clamped"] = new(() => () => [ClampedSpan.Tension(Frequency.FromHertz(150), Length.FromMillimeters(250), LinearDensity.FromGramsPerMeter(8.4), FlexuralRigidity.FromNewtonSquareMeters(2e-5)).Newtons]),
        ["plane25"] = new(() =>
        {
            ProbePoint[] points = Inputs.Points(5);
            return () =>
            {
                PlaneFit fit = PlaneFit.Fit(points);
                return [fit.SlopeX.SiValue, fit.SlopeY.SiValue];
            };
        }),
        ["orthogonal25"] = new(() =>
        {
            ProbePoint[] points = Inputs.Points(5);
            return () =>
            {
                OrthogonalPlane plane = OrthogonalPlane.Fit(points);
                return [plane.NormalX, plane.NormalY, plane.NormalZ];
            };
        }),
        ["zone10000"] = new(() =>
        {
            ProbePoint[] points = Inputs.Points(100);
            return () => [MinimumZone.InZ(points).Width.Meters];
        }),
        ["tramming100"] = new(() =>
        {
            ProbePoint[] points = Inputs.Points(10);
            BedSupports supports = TrammingPlans.FourScrews();
            return () => [.. supports.Plan(PlaneFit.Fit(points)).Turns.Select(turn => turn.HeightChange.SiValue)];
        }),
        ["beads"] = new(() =>
        {
            double[] widths = [.. Inputs.Places(Places, 6).Select(u => 4e-4 + (1e-3 * u))], areas = new double[Places];
            return () =>
            {
                for (int i = 0; i < widths.Length; i++)
                {
                    areas[i] = Bead.FromMeters(widths[i], 2e-4).AreaSquareMeters;
                }

                return areas;
            };
        }),
        ["fitseries50"] = new(() =>
        {
            FitSeries start = FitSeries.Between(0.90, 1.00);
            return () => [FitSeriesRefit.Refit(start, 50).Estimate.Flow.SiValue];
        }),
        ["least-squares-100"] = new(() => LeastSquares(100)),
        ["least-squares-1000"] = new(() => LeastSquares(1000)),
        ["monte-carlo"] = new(() =>
        {
            BudgetInput[] inputs = [BudgetInput.Of("a", Measured.Of(2.0, 0.1)), BudgetInput.Of("b", Measured.Of(3.0, 0.2))];
            return () =>
            {
                MonteCarloResult<double> product = MonteCarlo.Propagate<double>(x => x[0] * x[1], inputs, new MonteCarloOptions { Seed = 1, Trials = Places });
                (double lower, double upper) = product.SymmetricInterval();
                return [product.Result.SiValue, product.Result.SiStandardUncertainty, lower, upper];
            };
        }),
        ["recommendation"] = new(() =>
        {
            double[] t = [.. Enumerable.Range(0, 192_000).Select(n => n / Inputs.VibrationRate)];
            double[] x = Inputs.Vibration(t.Length), y = Inputs.Vibration(t.Length, 2), z = Inputs.Vibration(t.Length, 3);
            return () => [RecordToRecommendation.Recommend(t, x, y, z)];
        }),
    };

    private static Func<double[]> LeastSquares(int readings)
    {
        double[] design = Inputs.Places(3 * readings, 7), response = Inputs.Places(readings, 8);
        return () => [.. LinearLeastSquares.Fit(design, 3, response).Coefficients];
    }

    private static Func<double[]> PlateFit(int side, ThinPlateOptions? options)
    {
        ProbePoint[] points = Inputs.Points(side);
        Length middle = Length.FromMeters(Inputs.Side / 2);
        return () => [ThinPlateModel.Fit(points, options).EstimateAt(middle, middle).Meters];
    }

    private static Func<double[]> Heights(IHeightModel model, int places = Places)
    {
        double[] xs = Inputs.Places(Places, 3)[..places], ys = Inputs.Places(Places, 4)[..places], zs = new double[places];
        return () =>
        {
            model.Heights(xs, ys, zs);
            return zs;
        };
    }
}
