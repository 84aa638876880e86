using System.Globalization;
using WorkshopSimulator;

if (args.Length is < 1 or > 2 || args[0].StartsWith('-'))
{
    Console.Error.WriteLine("Usage: WorkshopSimulator FOLDER [SEED]. Writes the readings of an invented machine, and the truth, into FOLDER; SEED is 1 if not given.");
    return 2;
}

if (!ulong.TryParse(args.Length == 2 ? args[1] : "1", NumberStyles.None, CultureInfo.InvariantCulture, out ulong seed))
{
    Console.Error.WriteLine($"The seed '{args[1]}' is not a whole number.");
    return 2;
}

WorkshopFolder.Write(Workshop.Visit(seed), args[0]);
return 0;
