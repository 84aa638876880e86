using System.Text;

namespace PrinterMath.CommissioningPass.Tests;

/// <summary>WAV files of any kind, byte by byte.</summary>
internal static class WaveBytes
{
    /// <summary>Integer PCM; samples are interleaved and reach from −1 to 1.</summary>
    internal static byte[] Pcm(int bits, int channels, int rate, double[] samples, bool extensible = false, byte[]? before = null)
    {
        using var data = new MemoryStream();
        using var writer = new BinaryWriter(data);
        foreach (double sample in samples)
        {
            long whole = (long)Math.Round(sample * ((1L << (bits - 1)) - 1));
            for (int shift = 0; shift < bits; shift += 8)
            {
                writer.Write((byte)((bits == 8 ? whole + 128 : whole) >> shift));
            }
        }

        return File(1, bits, channels, rate, data.ToArray(), extensible, before);
    }

    /// <summary>Floating point of 32 or 64 bits.</summary>
    internal static byte[] Float(int bits, int channels, int rate, double[] samples, bool extensible = false)
    {
        byte[] data = [.. samples.SelectMany(sample => bits == 32 ? BitConverter.GetBytes((float)sample) : BitConverter.GetBytes(sample))];
        return File(3, bits, channels, rate, data, extensible, null);
    }

    private static byte[] File(short tag, int bits, int channels, int rate, byte[] data, bool extensible, byte[]? before)
    {
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file, Encoding.ASCII);
        int frame = bits / 8 * channels;
        int formatSize = extensible ? 40 : 16;
        before ??= [];
        writer.Write("RIFF"u8);
        writer.Write(4 + 8 + formatSize + before.Length + 8 + data.Length + (data.Length % 2));
        writer.Write("WAVEfmt "u8);
        writer.Write(formatSize);
        writer.Write(extensible ? unchecked((short)0xFFFE) : tag);
        writer.Write((short)channels);
        writer.Write(rate);
        writer.Write(rate * frame);
        writer.Write((short)frame);
        writer.Write((short)bits);
        if (extensible)
        {
            writer.Write((short)22);
            writer.Write((short)bits);
            writer.Write((1 << channels) - 1);
            writer.Write(new Guid(tag, 0, 0x10, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71).ToByteArray());
        }

        writer.Write(before);
        writer.Write("data"u8);
        writer.Write(data.Length);
        writer.Write(data);
        if (data.Length % 2 == 1)
        {
            writer.Write((byte)0);
        }

        return file.ToArray();
    }
}
