using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension;

/// <summary>What the slack side of a belt keeps, and the acceleration that it so limits.</summary>
internal static class SlackSide
{
    internal static Measured<double> UsualShare => Measured.FromRange(0.1, 0.3);

    internal static BudgetInput Input(Measured<double> left) => BudgetInput.Of("share left on the slack side", left);

    /// <summary>a = (T₀·(1/q − κ) − F_guides)/m from T₀ = (F + κ·T₀)·q, F = m·a + F_guides.</summary>
    internal static AccelerationLimit Serves(BeltDrive drive, Measured<Force> tension, List<BudgetInput> tensionInputs, List<double> sensitivities, Measured<double> left)
    {
        Guard.Positive(tension.SiValue, nameof(tension));
        Guard.NonNegative(left.SiValue, "slackSideShare");
        double worst = WorstStrand.Of(drive).Share;
        List<BudgetInput> inputs = drive.LoadInputs();
        int drag = inputs.Count;
        inputs.AddRange(drive.Drag.Inputs);
        int share = inputs.Count;
        inputs.Add(Input(left));
        int first = inputs.Count;
        inputs.AddRange(tensionInputs);
        double[] estimates = [.. tensionInputs.Select(input => input.SiValue)];
        double Served(ReadOnlySpan<double> x)
        {
            double newtons = tension.SiValue;
            for (int i = 0; i < estimates.Length; i++)
            {
                newtons += sensitivities[i] * (x[first + i] - estimates[i]);
            }

            return ((newtons * ((1 / (worst + x[share])) - drive.Drag.Ratio(x[drag..]))) - drive.FrictionNewtons(x)) / drive.MassAtBelt(x);
        }

        return AccelerationLimit.From(Propagation.FirstOrder<Acceleration>(Served, inputs), tension);
    }
}
