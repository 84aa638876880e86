namespace WorkshopSimulator;

/// <summary>What a turn of one screw really does.</summary>
/// <param name="Name">Name of the screw.</param>
/// <param name="MovesMillimetres">How far one turn that raises the bed at this screw moves it at each screw, in their order.</param>
public sealed record ScrewTruth(string Name, IReadOnlyList<double> MovesMillimetres);
