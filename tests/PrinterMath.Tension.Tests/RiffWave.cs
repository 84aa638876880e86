using System.Buffers.Binary;
using System.Text;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tension.Tests;

/// <summary>Reads the one kind of file in data/audio: RIFF, PCM, 16 bit, mono.</summary>
internal static class RiffWave
{
    public static SampledSignal Read(string name)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "data", "audio", name));
        int rate = 0, at = 12;
        while (at + 8 <= bytes.Length)
        {
            string chunk = Encoding.ASCII.GetString(bytes, at, 4);
            int length = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(at + 4));
            ReadOnlySpan<byte> body = bytes.AsSpan(at + 8, Math.Min(length, bytes.Length - at - 8));
            if (chunk == "fmt ")
            {
                Assert.Equal(1, BinaryPrimitives.ReadInt16LittleEndian(body[2..]));
                Assert.Equal(16, BinaryPrimitives.ReadInt16LittleEndian(body[14..]));
                rate = BinaryPrimitives.ReadInt32LittleEndian(body[4..]);
            }
            else if (chunk == "data")
            {
                double[] samples = new double[body.Length / 2];
                for (int i = 0; i < samples.Length; i++)
                {
                    samples[i] = BinaryPrimitives.ReadInt16LittleEndian(body[(2 * i)..]) / 32768.0;
                }

                return SampledSignal.FromSamples(samples, Frequency.FromHertz(rate));
            }

            at += 8 + length + (length & 1);
        }

        throw new InvalidDataException($"{name} holds no samples.");
    }
}
