using PrinterMath.Measurement;
using UnitsNet;

namespace CommissioningPass.Pictures;

/// <summary>The tensions that serve, and both belts.</summary>
/// <param name="Lower">Least tension.</param>
/// <param name="Upper">Largest tension.</param>
/// <param name="UpperPlace">What forbids more.</param>
/// <param name="Target">Tension to aim at; null when none serves.</param>
/// <param name="A">Tension of belt A.</param>
/// <param name="B">Tension of belt B.</param>
internal sealed record TensionWindowData(
    Measured<Force> Lower, Measured<Force> Upper, string UpperPlace, Force? Target, Measured<Force> A, Measured<Force> B) : PictureData;
