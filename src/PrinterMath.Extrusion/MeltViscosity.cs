using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>Shear viscosity η of a melt, in Pa·s, as a function of shear rate γ̇, in 1/s, and temperature.</summary>
/// <remarks>
/// <para>Immutable. Shear rates are frequencies in 1/s; no cycle is meant. Published sets of constants for one plastic differ by much more than their digits: check η against a second source.</para>
/// <para>Not in it: pressure, the extra pressure of a converging flow (stretching), slip at the wall, degradation. Water in the filament lowers η as well.</para>
/// </remarks>
/// <example><code>
/// MeltViscosity abs = MeltViscosity.PowerLaw(0.25, DynamicViscosity.FromPascalSeconds(3.93e4), Temperature.FromDegreesCelsius(210), MolarEnergy.FromKilojoulesPerMole(49), range);
/// DynamicViscosity eta = abs.At(Frequency.FromPerSecond(300), Temperature.FromDegreesCelsius(200));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class MeltViscosity
{
    private readonly ShearLaw _law;
    private readonly double _coldest, _hottest, _slowest, _fastest;

    private MeltViscosity(ShearLaw law, ViscosityRange range)
    {
        _law = law;
        Guard.NotNull(range);
        _coldest = Guard.Positive(range.LowestTemperature.Kelvins, nameof(range.LowestTemperature));
        _hottest = Guard.Finite(range.HighestTemperature.Kelvins, nameof(range.HighestTemperature));
        _slowest = Guard.Positive(range.LowestShearRate.PerSecond, nameof(range.LowestShearRate));
        _fastest = Guard.Finite(range.HighestShearRate.PerSecond, nameof(range.HighestShearRate));
        RelativeStandardUncertainty = Guard.NonNegative(range.RelativeStandardUncertainty, nameof(range.RelativeStandardUncertainty));
        if (!(_hottest > _coldest))
        {
            throw Guard.Out(nameof(range.HighestTemperature), range.HighestTemperature, "above the lowest temperature");
        }

        if (!(_fastest > _slowest))
        {
            throw Guard.Out(nameof(range.HighestShearRate), range.HighestShearRate, "above the lowest shear rate");
        }

        if (RelativeStandardUncertainty >= 1)
        {
            throw Guard.Out(nameof(range.RelativeStandardUncertainty), RelativeStandardUncertainty, "less than 1");
        }
    }

    /// <summary>Lowest temperature the constants were measured at.</summary>
    public Temperature LowestTemperature => Temperature.FromKelvins(_coldest);

    /// <summary>Highest temperature the constants were measured at.</summary>
    public Temperature HighestTemperature => Temperature.FromKelvins(_hottest);

    /// <summary>Lowest shear rate the constants were measured at.</summary>
    public Frequency LowestShearRate => Frequency.FromPerSecond(_slowest);

    /// <summary>Highest shear rate the constants were measured at.</summary>
    public Frequency HighestShearRate => Frequency.FromPerSecond(_fastest);

    /// <summary>Relative standard uncertainty of η, a ratio, zero or more and less than 1.</summary>
    public double RelativeStandardUncertainty { get; }

    /// <summary>Exponent n of the shear rate in τ ~ γ̇ⁿ at high rates, a ratio greater than 0, at most 1.</summary>
    public double Exponent => _law.Exponent;

    /// <summary>Power law η = K·γ̇ⁿ⁻¹ with a consistency that falls with temperature, K(T) = K₀·exp[(E/R)·(1/T − 1/T₀)].</summary>
    /// <param name="exponent">Exponent n, greater than 0, at most 1; 1 is Newtonian.</param>
    /// <param name="atOnePerSecond">Viscosity at 1/s and the reference temperature: the number of K₀ in Pa·sⁿ; greater than zero.</param>
    /// <param name="reference">Reference temperature T₀, above 0 K.</param>
    /// <param name="activation">Activation energy E of K, zero or more; that of a shift of the shear rate is E/n.</param>
    /// <param name="range">Where the constants were measured.</param>
    /// <returns>The viscosity, defined above 0 K. It has no plateau at low rates and overstates η there.</returns>
    /// <remarks>Source: Ostwald 1925, de Waele 1923, as in R. B. Bird, R. C. Armstrong, O. Hassager 1987, Dynamics of Polymeric Liquids 1, 2nd ed., ch. 4 (from memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A constant is out of range.</exception>
    public static MeltViscosity PowerLaw(double exponent, DynamicViscosity atOnePerSecond, Temperature reference, MolarEnergy activation, ViscosityRange range) => new(
        new PowerLawShear(
            Guard.Positive(exponent) <= 1 ? exponent : throw Guard.Out(nameof(exponent), exponent, "at most 1: melts thin"),
            Guard.Positive(atOnePerSecond.PascalSeconds, nameof(atOnePerSecond)),
            Guard.Positive(reference.Kelvins, nameof(reference)),
            Guard.NonNegative(activation.JoulesPerMole, nameof(activation))),
        range);

    /// <summary>Cross model with the temperature law of Williams, Landel and Ferry: η = η₀/[1 + (η₀·γ̇/τ*)¹⁻ⁿ], η₀ = D₁·exp[−A₁·(T − T*)/(A₂ + T − T*)].</summary>
    /// <param name="exponent">Exponent n, greater than 0 and less than 1; a Newtonian melt is a power law with n = 1.</param>
    /// <param name="criticalStress">Stress τ* at the bend between plateau and power law, greater than zero.</param>
    /// <param name="atReference">Viscosity D₁ at T* and low rate, greater than zero.</param>
    /// <param name="reference">Reference temperature T*, above 0 K.</param>
    /// <param name="a1">Constant A₁, a ratio greater than zero.</param>
    /// <param name="a2">Constant A₂, greater than zero.</param>
    /// <param name="range">Where the constants were measured.</param>
    /// <returns>The viscosity. The temperature law has a pole at T* − A₂ and is refused below T*, the glass transition it counts from; it is meant for some 100 K above it.</returns>
    /// <remarks>
    /// Source: Cross 1965, Journal of Colloid Science 20, 417 to 437; Williams, Landel, Ferry 1955, Journal of the American Chemical Society 77, 3701 to 3707 (both from memory);
    /// in this form Hubmann et al. 2023, Polymers 15, 3147.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A constant is out of range.</exception>
    public static MeltViscosity CrossWlf(
        double exponent, Pressure criticalStress, DynamicViscosity atReference, Temperature reference, double a1, TemperatureDelta a2, ViscosityRange range) => new(
        new CrossWlfShear(
            Guard.StrictlyBetween(exponent, 0, 1),
            Guard.Positive(criticalStress.Pascals, nameof(criticalStress)),
            Guard.Positive(atReference.PascalSeconds, nameof(atReference)),
            Guard.Positive(reference.Kelvins, nameof(reference)),
            Guard.Positive(a1),
            Guard.Positive(a2.Kelvins, nameof(a2))),
        range);

    /// <summary>Viscosity η₀ at low rate, if the law has a plateau.</summary>
    /// <param name="temperature">Temperature of the melt, where the model is defined.</param>
    /// <param name="viscosity">The viscosity, or zero.</param>
    /// <returns>Whether there is one: not for a power law with n under 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The model is not defined at the temperature.</exception>
    public bool TryGetZeroShear(Temperature temperature, out DynamicViscosity viscosity)
    {
        double? plateau = _law.Plateau(Defined(temperature));
        viscosity = DynamicViscosity.FromPascalSeconds(plateau ?? 0);
        return plateau is not null;
    }

    /// <summary>Viscosity η at a shear rate and a temperature.</summary>
    /// <param name="shearRate">Shear rate γ̇, greater than zero.</param>
    /// <param name="temperature">Temperature of the melt, where the model is defined; outside of its measurements the number is an extrapolation, see <see cref="FindingsAt"/>.</param>
    /// <returns>The viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive, or the model is not defined at the temperature.</exception>
    public DynamicViscosity At(Frequency shearRate, Temperature temperature) => DynamicViscosity.FromPascalSeconds(
        PascalSeconds(Guard.Positive(shearRate.PerSecond, nameof(shearRate)), Defined(temperature)));

    /// <summary>Shear stress τ = η·γ̇ at a shear rate and a temperature.</summary>
    /// <param name="shearRate">Shear rate γ̇, greater than zero.</param>
    /// <param name="temperature">Temperature of the melt, where the model is defined.</param>
    /// <returns>The stress.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive, or the model is not defined at the temperature.</exception>
    public Pressure StressAt(Frequency shearRate, Temperature temperature) =>
        Pressure.FromPascals(shearRate.PerSecond * At(shearRate, temperature).PascalSeconds);

    /// <summary>True shear rate at the wall of a round channel, from the apparent one, 4·Q/(π·R³).</summary>
    /// <param name="apparent">Apparent shear rate, greater than zero.</param>
    /// <param name="temperature">Temperature of the melt, where the model is defined.</param>
    /// <returns>The rate at the wall: the apparent one for n = 1, larger for a melt that thins.</returns>
    /// <remarks>From Q = (π·R³/τ_w³)·∫₀^τ_w τ²·γ̇ dτ, which for a power law is the factor (3n + 1)/(4n). Source: Rabinowitsch 1929, Zeitschrift für physikalische Chemie 145, 1 (from memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive, or the model is not defined at the temperature.</exception>
    public Frequency WallShearRate(Frequency apparent, Temperature temperature) => Frequency.FromPerSecond(
        WallRate(Guard.Positive(apparent.PerSecond, nameof(apparent)), Defined(temperature)));

    /// <summary>What is to be said of the constants at a place of use.</summary>
    /// <param name="shearRate">Shear rate γ̇, greater than zero.</param>
    /// <param name="temperature">Temperature of the melt.</param>
    /// <returns>Nothing within the measured range; else see <see cref="MeltFindings"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive, or the model is not defined at the temperature.</exception>
    public IReadOnlyList<Finding> FindingsAt(Frequency shearRate, Temperature temperature)
    {
        double rate = Guard.Positive(shearRate.PerSecond, nameof(shearRate));
        return Outside(rate, rate, Defined(temperature));
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The law and its constants.</returns>
    public override string ToString() => _law.ToString()!;

    internal double PascalSeconds(double rate, double kelvins) => _law.PascalSeconds(rate, kelvins);

    internal double WallRate(double apparent, double kelvins) => _law.WallRate(apparent, kelvins);

    internal bool IsDefined(double kelvins) => _law.IsDefined(kelvins);

    /// <summary>Kelvins of a temperature at which the model is defined.</summary>
    internal double Defined(Temperature temperature) => double.IsFinite(temperature.Kelvins) && _law.IsDefined(temperature.Kelvins)
        ? temperature.Kelvins
        : throw Guard.Out(nameof(temperature), temperature, _law.Rule);

    internal List<Finding> Outside(double slowest, double fastest, double kelvins)
    {
        List<Finding> findings = [];
        if (kelvins < _coldest || kelvins > _hottest)
        {
            findings.Add(new Finding(
                MeltFindings.TemperatureOutsideRange,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The viscosity was measured from {_coldest - 273.15:0.#} to {_hottest - 273.15:0.#} °C; {kelvins - 273.15:0.#} °C is an extrapolation."),
                new FindingNumber("temperature", kelvins, "K"),
                new FindingNumber("lowest", _coldest, "K"),
                new FindingNumber("highest", _hottest, "K")));
        }

        if (slowest < _slowest || fastest > _fastest)
        {
            double rate = fastest > _fastest ? fastest : slowest;
            findings.Add(new Finding(
                MeltFindings.ShearRateOutsideRange,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The viscosity was measured from {_slowest:G4} to {_fastest:G4} per second; {rate:G4} per second is an extrapolation."),
                new FindingNumber("shearRate", rate, "s-1"),
                new FindingNumber("lowest", _slowest, "s-1"),
                new FindingNumber("highest", _fastest, "s-1")));
        }

        return findings;
    }
}
