using NAudio.Wave;
using PrinterMath.Measurement;
using UnitsNet;

namespace CommissioningPass.Inputs;

/// <summary>A recording from a RIFF WAVE file: PCM of 8, 16, 24 or 32 bits or floating point, plain or extensible header.</summary>
internal sealed class Recording
{
    private Recording(string file, SampledSignal signal, string? remark)
    {
        File = file;
        Signal = signal;
        Remark = remark;
    }

    internal string File { get; }

    internal SampledSignal Signal { get; }

    /// <summary>What was done to the sound beyond reading it; null when nothing was.</summary>
    internal string? Remark { get; }

    internal static Recording Read(string folder, string file)
    {
        string path = Path.Combine(folder, file);
        if (!System.IO.File.Exists(path))
        {
            throw new InputException(file, null, "the recording is missing.");
        }

        try
        {
            using FileStream stream = System.IO.File.OpenRead(path);
            RiffLayout.Check(stream, file);
            stream.Position = 0;
            return Read(stream, file);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException or InvalidOperationException or ArgumentException)
        {
            throw new InputException(file, null, "the recording cannot be read; " + fault.Message.ReplaceLineEndings(" "));
        }
    }

    private static Recording Read(FileStream stream, string file)
    {
        using var reader = new WaveFileReader(stream);
        if (reader.WaveFormat.Encoding is not (WaveFormatEncoding.Pcm or WaveFormatEncoding.IeeeFloat or WaveFormatEncoding.Extensible))
        {
            throw new InputException(file, null, $"the sound is encoded as {reader.WaveFormat.Encoding}; plain PCM or floating point is needed.");
        }

        int channels = reader.WaveFormat.Channels;
        int rate = reader.WaveFormat.SampleRate;
        if (rate is < 2_000 or > 192_000)
        {
            throw new InputException(file, null, FormattableString.Invariant($"the sample rate is {rate} Hz; from 2000 to 192000 Hz is expected."));
        }

        float[] all = new float[reader.SampleCount * channels];
        ISampleProvider samples = reader.ToSampleProvider();
        int filled = 0;
        for (int got; filled < all.Length && (got = samples.Read(all.AsSpan(filled))) > 0; filled += got)
        {
        }

        int strange = Array.FindIndex(all, sample => !float.IsFinite(sample));
        if (strange >= 0)
        {
            throw new InputException(file, null, FormattableString.Invariant($"sample {strange / channels} is not a finite number."));
        }

        int loudest = Loudest(all, channels);
        float[] mono = [.. Enumerable.Range(0, filled / channels).Select(i => all[(i * channels) + loudest])];
        CheckSound(mono, rate, file);
        string? remark = channels == 1
            ? null
            : FormattableString.Invariant($"{file} has {channels} channels; channel {loudest + 1}, the loudest, is used.");
        return new Recording(file, SampledSignal.FromSamples(mono, Frequency.FromHertz(rate)), remark);
    }

    private static int Loudest(float[] interleaved, int channels)
    {
        double[] power = new double[channels];
        for (int i = 0; i < interleaved.Length; i++)
        {
            power[i % channels] += (double)interleaved[i] * interleaved[i];
        }

        return Array.IndexOf(power, power.Max());
    }

    private static void CheckSound(float[] mono, int rate, string file)
    {
        double seconds = (double)mono.Length / rate;
        if (seconds < 0.2)
        {
            throw new InputException(file, null, FormattableString.Invariant($"the recording is {seconds:0.###} s long; at least 0.2 s is needed."));
        }

        double mean = mono.Average(sample => (double)sample);
        if (mono.All(sample => Math.Abs(sample - mean) < 1e-4))
        {
            throw new InputException(file, null, "the recording is silent; check the microphone and pluck again.");
        }
    }
}
