namespace PrinterMath.Measurement;

/// <summary>One result of a model with several: its name, its UCUM unit and how it follows from the inputs.</summary>
public sealed class JointOutput
{
    /// <summary>A result.</summary>
    /// <param name="name">Its name; not empty.</param>
    /// <param name="ucumUnit">Its coherent SI unit in the Unified Code for Units of Measure.</param>
    /// <param name="model">Its model, in SI.</param>
    /// <exception cref="ArgumentException">The name or the unit is empty.</exception>
    public JointOutput(string name, string ucumUnit, MeasurementModel model)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentException.ThrowIfNullOrWhiteSpace(ucumUnit);
        Name = name;
        UcumUnit = ucumUnit;
        Model = Guard.NotNull(model);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Its coherent SI unit.</summary>
    public string UcumUnit { get; }

    /// <summary>Its model.</summary>
    public MeasurementModel Model { get; }
}
