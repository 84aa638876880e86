using System.Diagnostics;

namespace PrinterMath.Measurement;

/// <summary>A named input of a measurement model: estimate, standard uncertainty and degrees of freedom, in SI.</summary>
/// <remarks>Immutable. The number of observations, where known, lets an undecided verdict say how often to repeat.</remarks>
/// <example><code>BudgetInput length = BudgetInput.Of("span length", Measured.Of(Length.FromMillimeters(242), Length.FromMillimeters(0.5)));</code></example>
[DebuggerDisplay("{Name,nq} = {SiValue} ± {SiStandardUncertainty} {UcumUnit,nq}")]
public sealed class BudgetInput
{
    private BudgetInput(string name, double siValue, double siStandardUncertainty, double degreesOfFreedom, string ucumUnit, int? observations, InputShape shape = InputShape.Normal)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name;
        SiValue = siValue;
        SiStandardUncertainty = siStandardUncertainty;
        DegreesOfFreedom = degreesOfFreedom;
        UcumUnit = ucumUnit;
        Observations = observations;
        Shape = shape;
    }

    /// <summary>What the input is, in the caller's words; unique within a budget.</summary>
    public string Name { get; }

    /// <summary>The estimate in <see cref="UcumUnit"/>.</summary>
    public double SiValue { get; }

    /// <summary>The standard uncertainty in <see cref="UcumUnit"/>, zero for an exact input.</summary>
    public double SiStandardUncertainty { get; }

    /// <summary>Degrees of freedom, 1 or more, or infinite.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The coherent SI unit in the Unified Code for Units of Measure.</summary>
    public string UcumUnit { get; }

    /// <summary>How many independent observations were averaged, when more of them would lower the uncertainty; else null.</summary>
    public int? Observations { get; }

    /// <summary>Shape of the distribution, for second order and Monte Carlo; normal unless stated.</summary>
    public InputShape Shape { get; }

    /// <summary>An input from a measured number.</summary>
    /// <param name="name">What it is; not empty.</param>
    /// <param name="measured">The measured number.</param>
    /// <typeparam name="T">Its quantity.</typeparam>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="InvalidOperationException">The number was never measured.</exception>
    public static BudgetInput Of<T>(string name, Measured<T> measured)
        where T : struct =>
        new(name, measured.SiValue, measured.SiStandardUncertainty, measured.DegreesOfFreedom, Measured<T>.UcumUnit, null);

    /// <summary>An input from a measured temperature, in kelvin.</summary>
    /// <param name="name">What it is; not empty.</param>
    /// <param name="measured">The measured temperature.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="InvalidOperationException">The temperature was never measured.</exception>
    public static BudgetInput Of(string name, MeasuredTemperature measured) =>
        new(name, measured.Value.Kelvins, measured.StandardUncertainty.Kelvins, measured.DegreesOfFreedom, "K", null);

    /// <summary>An input that is the mean of independent observations, so that repeating it helps.</summary>
    /// <param name="name">What it is; not empty.</param>
    /// <param name="measured">Mean and its standard uncertainty, which falls with 1/√n.</param>
    /// <param name="observations">How many observations were averaged, at least 1.</param>
    /// <typeparam name="T">Its quantity.</typeparam>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentException">The name is empty or there are no observations.</exception>
    /// <exception cref="InvalidOperationException">The number was never measured.</exception>
    public static BudgetInput Repeated<T>(string name, Measured<T> measured, int observations)
        where T : struct =>
        new(name, measured.SiValue, measured.SiStandardUncertainty, measured.DegreesOfFreedom, Measured<T>.UcumUnit, Guard.AtLeast(observations, 1));

    /// <summary>The same input, with the shape of its distribution stated.</summary>
    /// <param name="shape">The shape, see <see cref="InputShape"/>.</param>
    /// <returns>A new input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the named shapes.</exception>
    public BudgetInput WithShape(InputShape shape) =>
        Enum.IsDefined(shape)
            ? new BudgetInput(Name, SiValue, SiStandardUncertainty, DegreesOfFreedom, UcumUnit, Observations, shape)
            : throw Guard.Out(nameof(shape), shape, "one of the named shapes");

    internal static BudgetInput FromSi(string name, double value, double standardUncertainty, double degreesOfFreedom, string ucumUnit) =>
        new(name, value, standardUncertainty, degreesOfFreedom, ucumUnit, null);
}
