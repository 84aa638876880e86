namespace CommissioningPass.Report;

/// <summary>Writes beside the target and moves into place, so that no half-written file is ever seen.</summary>
internal static class WholeFile
{
    internal static void Write(string path, Action<Stream> write)
    {
        string temporary = path + ".part";
        try
        {
            using (FileStream stream = File.Create(temporary))
            {
                write(stream);
            }

            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            if (File.Exists(temporary))
            {
                File.Delete(temporary);
            }
        }
    }
}
