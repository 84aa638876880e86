using System.Collections.ObjectModel;
using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Extrusion;

/// <summary>The feed drive checked: measured against commanded lengths of filament, and what the drive's constant has to be multiplied by.</summary>
/// <remarks>
/// <para>Feed ratio r = Σ c·m/Σ c² by least squares through zero, with c commanded and m measured; the constant is multiplied by 1/r.
/// u²(r) = s²/Σ c² + (Σ c/Σ c²)²·(step²/12 + u²(ruler) + r²·u²(commanded)): only the scatter s, with n − 1 degrees of freedom, shrinks with more trials.
/// Source: JCGM 100:2008, 4.2.3, 5.1.2, F.2.2.1.</para>
/// <para>Caution: the hot end burns, molten plastic gives off fumes, so ventilate; feed only at a temperature that the maker of the filament and of the hot end
/// allow. Measure the free filament before the drive, slowly fed, so that melting does not hold it back.</para>
/// </remarks>
/// <example><code>
/// FeedCalibration feed = FeedCalibration.Fit(trials, new FeedCalibrationOptions { Resolution = Length.FromMillimeters(0.1) });
/// Measured&lt;ReciprocalLength&gt; steps = feed.Rescale(ReciprocalLength.FromInverseMillimeters(415)).Result;
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class FeedCalibration
{
    private const double FarFromOne = 2;
    private readonly FeedModel? _model;
    private readonly ReadOnlyCollection<Finding> _findings;

    private FeedCalibration(FeedModel? model, int trials, Tolerance<double>? limit, List<Finding> findings)
    {
        _model = model;
        _findings = findings.AsReadOnly();
        TrialCount = trials;
        Verdict = model is null ? null : limit?.Judge(model.Budget(model.Ratio - 1, 1));
    }

    /// <summary>What was noticed, see <see cref="ExtrusionFindings"/>.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    /// <summary>Number of trials.</summary>
    public int TrialCount { get; }

    /// <summary>Relative feed error, measured/commanded − 1, a ratio: positive when too much is fed.</summary>
    /// <exception cref="IndeterminateException">All trials read alike and no resolution was stated.</exception>
    public UncertaintyBudget<double> FeedError => Model.Budget(Model.Ratio - 1, 1);

    /// <summary>Factor 1/r on steps for each millimetre, or on degrees for each millimetre: commanded over measured.</summary>
    /// <exception cref="IndeterminateException">All trials read alike and no resolution was stated.</exception>
    public UncertaintyBudget<double> Correction => Model.Scaled<double>(1);

    /// <summary>The feed error against the limit; null when no limit was given or the trials hold no answer.</summary>
    public Verdict<double>? Verdict { get; }

    private FeedModel Model => _model ?? throw new IndeterminateException(_findings.First(f => f.Severity == FindingSeverity.Blocking));

    /// <summary>Calibrates from several trials.</summary>
    /// <param name="trials">At least two trials, in the order they were made.</param>
    /// <param name="options">Ruler and limit; null for the defaults.</param>
    /// <returns>The calibration.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two trials, a trial without lengths, or an option out of range.</exception>
    public static FeedCalibration Fit(IReadOnlyList<FeedTrial> trials, FeedCalibrationOptions? options = null)
    {
        options ??= new FeedCalibrationOptions();
        Guard.StrictlyBetween(options.Significance, 0, 0.5);
        Guard.AtLeast(Guard.NotNull(trials).Count, 2, nameof(trials));
        double[] commanded = [.. trials.Select(trial => Guard.Positive(trial.CommandedMeters, nameof(trials)))];
        double[] measured = [.. trials.Select(trial => trial.MeasuredMeters)];
        var model = FeedModel.Fit(commanded, measured, options);
        List<Finding> findings = [.. FeedChecks.Find(commanded, measured, model, options)];
        if (model.Ratio is < 1 / FarFromOne or > FarFromOne)
        {
            findings.Add(new Finding(
                ExtrusionFindings.FeedImplausible,
                FindingSeverity.Caution,
                string.Create(CultureInfo.InvariantCulture, $"The measured lengths are {model.Ratio:G3} times the commanded ones: check units and drive ratio."),
                new FindingNumber("feedRatio", model.Ratio, "1")));
        }

        return new FeedCalibration(findings.Exists(f => f.Severity == FindingSeverity.Blocking) ? null : model, trials.Count, options.Limit, findings);
    }

    /// <summary>New constant from a single trial: present·commanded/measured.</summary>
    /// <param name="present">Present steps for each length, greater than zero.</param>
    /// <param name="commanded">Commanded length, greater than zero.</param>
    /// <param name="measured">Measured length, greater than zero.</param>
    /// <returns>The new constant and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive.</exception>
    /// <exception cref="InvalidOperationException">A length was never measured.</exception>
    public static UncertaintyBudget<ReciprocalLength> Rescale(ReciprocalLength present, Measured<Length> commanded, Measured<Length> measured)
    {
        double k = Guard.Positive(present.InverseMeters, nameof(present));
        double c = Guard.Positive(commanded.SiValue, nameof(commanded));
        double m = Guard.Positive(measured.SiValue, nameof(measured));
        return Propagation.FirstOrder<ReciprocalLength>(
            k * c / m, [BudgetInput.Of("commanded length", commanded), BudgetInput.Of("measured length", measured)], [k / m, -k * c / (m * m)]);
    }

    /// <summary>New constant from the calibration.</summary>
    /// <param name="present">Present steps for each length, greater than zero.</param>
    /// <returns>The new constant and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The constant is not positive.</exception>
    /// <exception cref="IndeterminateException">All trials read alike and no resolution was stated.</exception>
    public UncertaintyBudget<ReciprocalLength> Rescale(ReciprocalLength present) =>
        Model.Scaled<ReciprocalLength>(Guard.Positive(present.InverseMeters, nameof(present)));

    /// <summary>New rotation of the drive for the length, for example the millimetre, that the present rotation was set for.</summary>
    /// <param name="present">Present rotation, greater than zero.</param>
    /// <returns>The new rotation and its budget.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rotation is not positive.</exception>
    /// <exception cref="IndeterminateException">All trials read alike and no resolution was stated.</exception>
    public UncertaintyBudget<Angle> Rescale(Angle present) => Model.Scaled<Angle>(Guard.Positive(present.Radians, nameof(present)));

    /// <summary>How many trials like these bring the relative standard uncertainty down to a wanted value.</summary>
    /// <param name="wanted">Wanted standard uncertainty of the feed ratio, a ratio greater than zero.</param>
    /// <param name="trials">Number of trials in all, at least 2; zero when there is no answer.</param>
    /// <returns>False when repeating does not help, because ruler, step and commanded length alone exceed it, or the calibration has no answer.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The wanted uncertainty is not positive.</exception>
    public bool TryGetTrialsFor(double wanted, out int trials)
    {
        Guard.Positive(wanted);
        trials = 0;
        return _model is not null && _model.TryGetTrialsFor(wanted, TrialCount, out trials);
    }

    /// <summary>Invariant text.</summary>
    /// <returns>The feed error, or the finding that stands in its place.</returns>
    public override string ToString() => _model is null ? _findings[0].ToString() : $"feed error {FeedError.Result.ToString("S %", CultureInfo.InvariantCulture)}";
}
