namespace CommissioningPass.Pictures;

/// <summary>What a step hands over to be drawn; it draws nothing itself.</summary>
internal abstract record PictureData;
