using System.Buffers.Binary;

namespace CommissioningPass.Inputs;

/// <summary>
/// Walks the chunks of a RIFF file to see that the sound is all there: a WAVE reader hands out what it finds and does not say that the
/// header promised more.
/// </summary>
internal static class RiffLayout
{
    internal static void Check(Stream stream, string file)
    {
        Span<byte> head = stackalloc byte[12];
        if (stream.Length == 0)
        {
            throw new InputException(file, null, "the file is empty.");
        }

        if (stream.ReadAtLeast(head, 12, throwOnEndOfStream: false) < 12 || !head.StartsWith("RIFF"u8) || !head[8..].StartsWith("WAVE"u8))
        {
            throw new InputException(file, null, "this is not a RIFF WAVE file.");
        }

        while (stream.ReadAtLeast(head[..8], 8, throwOnEndOfStream: false) == 8)
        {
            uint promised = BinaryPrimitives.ReadUInt32LittleEndian(head[4..]);
            long left = stream.Length - stream.Position;
            if (promised > left)
            {
                throw new InputException(file, null, FormattableString.Invariant(
                    $"the recording is cut off: its header promises {promised} bytes in a chunk and {left} are there. Copy or record it again."));
            }

            if (head.StartsWith("data"u8))
            {
                CheckData(promised, left, file);
                return;
            }

            stream.Position += promised + (promised % 2);
        }

        throw new InputException(file, null, "the recording holds no sound: there is no data chunk.");
    }

    private static void CheckData(uint promised, long left, string file)
    {
        if (promised == 0)
        {
            throw new InputException(file, null, left > 8
                ? "the recording was not closed properly: its header promises no sound, yet bytes follow. Save it again."
                : "the recording holds no sound.");
        }
    }
}
