namespace WorkshopSimulator;

/// <summary>How a span was plucked and heard.</summary>
/// <param name="Plucks">Plucks in the recording.</param>
/// <param name="SecondsBetween">Time from one to the next.</param>
/// <param name="Quality">Quality factor of the first partial, 20 to 100.</param>
/// <param name="QualityTrend">Power of the partial number by which the quality factor grows or falls.</param>
/// <param name="Glide">Relative rise of the frequency at the start of the hardest pluck.</param>
/// <param name="Noise">Standard deviation of the room noise relative to the loudest moment.</param>
/// <param name="Hum">Mains hum relative to the loudest moment.</param>
/// <param name="RollOffHertz">Corner of the microphone's bass roll-off.</param>
public sealed record PluckScene(
    int Plucks,
    double SecondsBetween,
    double Quality,
    double QualityTrend,
    double Glide,
    double Noise,
    double Hum,
    double RollOffHertz);
