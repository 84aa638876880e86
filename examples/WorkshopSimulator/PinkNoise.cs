namespace WorkshopSimulator;

/// <summary>Room noise whose power falls about 3 dB an octave: first-order noises with corner frequencies an octave apart, summed.</summary>
internal sealed class PinkNoise
{
    private readonly double[] _memory;
    private readonly double[] _state;
    private readonly SeededRandom _random;

    internal PinkNoise(SeededRandom random, double sampleRate)
    {
        _random = random;
        var memory = new List<double>();
        for (double corner = 5; corner < sampleRate / 4; corner *= 2)
        {
            memory.Add(Math.Exp(-2 * Math.PI * corner / sampleRate));
        }

        _memory = [.. memory];
        _state = new double[_memory.Length];
        for (int i = 0; i < _state.Length; i++)
        {
            _state[i] = random.Normal(0, 1);
        }
    }

    internal double Next()
    {
        double sum = 0;
        for (int i = 0; i < _state.Length; i++)
        {
            _state[i] = (_memory[i] * _state[i]) + (Math.Sqrt(1 - (_memory[i] * _memory[i])) * _random.Normal(0, 1));
            sum += _state[i];
        }

        return sum / Math.Sqrt(_state.Length);
    }
}
