namespace CommissioningPass.Pictures;

/// <summary>Where a text stands to its place.</summary>
internal enum TextAlign
{
    /// <summary>It begins there.</summary>
    Left,

    /// <summary>Its middle is there.</summary>
    Middle,

    /// <summary>It ends there.</summary>
    Right,
}
