namespace PrinterMath.Measurement;

/// <summary>A measurement model y = f(x₁ … xₙ): every number in the coherent SI unit of its input, the answer in that of the result.</summary>
/// <param name="inputs">Values of the inputs, in the order in which they were given.</param>
/// <returns>The value of the result.</returns>
/// <remarks>Must be a pure function: it is called at and around the estimates. Source: JCGM 100:2008 (GUM), 4.1.1.</remarks>
public delegate double MeasurementModel(ReadOnlySpan<double> inputs);
