namespace WorkshopSimulator;

/// <summary>What is true of one belt's plucked span.</summary>
/// <param name="Span">The span itself.</param>
/// <param name="Scene">How it was plucked and heard.</param>
/// <param name="PartialsHertz">Natural frequencies for small vibrations, lowest first.</param>
public sealed record BeltTruth(StiffSpan Span, PluckScene Scene, IReadOnlyList<double> PartialsHertz);
