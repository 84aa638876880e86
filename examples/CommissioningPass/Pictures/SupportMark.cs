namespace CommissioningPass.Pictures;

/// <summary>A screw under the bed and what to do to it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="X">Place in millimetres.</param>
/// <param name="Y">Place in millimetres.</param>
/// <param name="Turn">How far, with its uncertainty.</param>
/// <param name="Sense">Which way, seen from the hand.</param>
/// <param name="From">From which side the hand turns.</param>
/// <param name="Raises">Whether the bed goes up there.</param>
/// <param name="Leave">Whether it is best left alone.</param>
internal sealed record SupportMark(string Name, double X, double Y, string Turn, string Sense, string From, bool Raises, bool Leave)
{
    internal string Words => Leave ? $"{Name}: leave it" : $"{Name}: {Turn} {Sense} {From}, which {(Raises ? "raises" : "lowers")} the bed";
}
