namespace WorkshopSimulator;

/// <summary>The bass roll-off of a phone microphone: two first-order RC sections in a row.</summary>
/// <param name="cornerHertz">Corner of each section.</param>
/// <param name="sampleRate">Sample rate in hertz.</param>
internal sealed class HighPass(double cornerHertz, double sampleRate)
{
    private readonly double _keep = 1 / (1 + (2 * Math.PI * cornerHertz / sampleRate));
    private readonly double[] _input = new double[2];
    private readonly double[] _output = new double[2];

    internal double Next(double sample)
    {
        for (int i = 0; i < 2; i++)
        {
            _output[i] = _keep * (_output[i] + sample - _input[i]);
            _input[i] = sample;
            sample = _output[i];
        }

        return sample;
    }
}
