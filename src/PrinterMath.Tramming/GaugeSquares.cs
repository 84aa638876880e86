namespace PrinterMath.Tramming;

/// <summary>Mean squares of a crossed study.</summary>
internal sealed record GaugeSquares(MeanSquare Operators, MeanSquare Places, MeanSquare Interaction, MeanSquare Error)
{
    /// <summary>Interaction and repetitions as one.</summary>
    internal MeanSquare Pooled
    {
        get
        {
            double free = Interaction.DegreesOfFreedom + Error.DegreesOfFreedom;
            return new MeanSquare(1, ((Interaction.Value * Interaction.DegreesOfFreedom) + (Error.Value * Error.DegreesOfFreedom)) / free, free);
        }
    }
}
