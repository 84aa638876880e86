using System.Diagnostics;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>The height of contact µ from repeated trials, heights positive upwards: where half of them touch, and how sharp the transition is.</summary>
/// <remarks>
/// <para>P(touching at h) = 1/(1 + exp((h − µ)/s)), s &gt; 0 the spread, fitted by maximum likelihood; covariance of µ and s from the inverse information by first
/// order. Trials far from µ tell nothing of it: the degrees of freedom are Σ4p(1 − p) − 2, at least 1, a choice that lets intervals from few trials hold in simulation. Answers that change sides only once have no such fit: then the middle of the interval is given with u = width/√12 and a finding. Without a gauge µ is the surface; a
/// gauge's thickness t is subtracted, and its uncertainty enters once.</para>
/// <para>Findings: <c>contact.oneSided</c>, <c>contact.reversed</c>, <c>contact.transition.unclear</c> (blocking), <c>contact.contradiction</c> (caution),
/// <c>contact.separable</c> (note).</para>
/// <para>Caution: approach slowly and from above, past the backlash; a hot nozzle burns; never drive the nozzle into the bed to gain a trial.</para>
/// <para>Source: logistic regression and its information matrix, McCullagh, Nelder 1989, Generalized Linear Models, 2nd ed., chapter 4; no finite fit for separable data: Albert,
/// Anderson 1984, Biometrika 71, 1 (both from memory); the interval: JCGM 100:2008 (GUM), 4.3.7.</para>
/// </remarks>
/// <example><code>
/// ContactTransition contact = ContactTransition.Fit(trials, paper);
/// if (contact.TryGetSurfaceHeight(out Measured&lt;Length&gt; height)) { Console.WriteLine(height); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ContactTransition
{
    private readonly Measured<Length> _contact;
    private readonly LogisticSolution? _curve;
    private readonly Finding[] _findings;

    private ContactTransition(Measured<Length> contact, Measured<Length> gauge, LogisticSolution? curve, Finding[] findings)
    {
        _contact = contact;
        _curve = curve;
        _findings = findings;
        GaugeThickness = gauge;
    }

    /// <summary>Thickness t of the gauge; zero and exact where there is none.</summary>
    public Measured<Length> GaugeThickness { get; }

    /// <summary>Where the height comes from.</summary>
    /// <exception cref="IndeterminateException">The trials hold no contact.</exception>
    public ContactMethod Method => Contact.HasValue && _curve is not null ? ContactMethod.Logistic : ContactMethod.Interval;

    /// <summary>What was noticed.</summary>
    public IReadOnlyList<Finding> Findings => Array.AsReadOnly(_findings);

    /// <summary>Height at which the bare nozzle touches the surface, µ − t.</summary>
    /// <exception cref="IndeterminateException">The trials hold no contact.</exception>
    public Measured<Length> SurfaceHeight => Budget.Result;

    /// <summary>The same with the shares of the transition and of the gauge.</summary>
    /// <exception cref="IndeterminateException">The trials hold no contact.</exception>
    public UncertaintyBudget<Length> Budget => Propagation.FirstOrder<Length>(
        Contact.SiValue - GaugeThickness.SiValue,
        [BudgetInput.Of("height of contact", Contact), BudgetInput.Of("gauge thickness", GaugeThickness)],
        [1, -1]);

    /// <summary>Height µ and spread s with their covariance, in metres.</summary>
    /// <exception cref="IndeterminateException">The answers change sides only once, or hold no contact.</exception>
    public JointEstimate Parameters => _curve is LogisticSolution curve
        ? JointEstimate.FromSi(
            ["height of contact", "spread"],
            ["m", "m"],
            [curve.Middle, curve.Spread],
            [curve.MiddleVariance, curve.Covariance, curve.Covariance, curve.SpreadVariance],
            curve.DegreesOfFreedom)
        : throw new IndeterminateException(_findings[0]);

    private Measured<Length> Contact => _contact.HasValue ? _contact : throw new IndeterminateException(_findings[0]);

    /// <summary>The contact of trials by light or bare contact.</summary>
    /// <param name="trials">At least two trials, their heights within 10 mm.</param>
    /// <returns>The result, which may hold no height.</returns>
    /// <exception cref="ArgumentException">Too few trials, or heights that are no contact's.</exception>
    public static ContactTransition Fit(IReadOnlyList<ContactTrial> trials) => Fit(trials, Measured.Exact(Length.Zero));

    /// <summary>The contact of trials through a gauge.</summary>
    /// <param name="trials">At least two trials, their heights within 10 mm.</param>
    /// <param name="gaugeThickness">Thickness of the gauge, zero or more.</param>
    /// <returns>The result, which may hold no height.</returns>
    /// <exception cref="ArgumentException">Too few trials, heights that are no contact's, or a thickness that was never measured or is negative.</exception>
    public static ContactTransition Fit(IReadOnlyList<ContactTrial> trials, Measured<Length> gaugeThickness)
    {
        const double WidestRange = 0.01;
        ContactTrial[] copy = [.. Guard.NotNull(trials)];
        if (copy.Length < 2)
        {
            throw Guard.Refused(nameof(trials), $"There are {copy.Length} trials; a contact needs at least one clear and one touching.");
        }

        double range = copy.Max(t => t.HeightMeters) - copy.Min(t => t.HeightMeters);
        if (range > WidestRange)
        {
            throw Guard.Refused(nameof(trials), FormattableString.Invariant($"The heights span {range * 1e3:0.###} mm; trials around a contact lie within {WidestRange * 1e3} mm. Are they in the unit that was said?"));
        }

        if (!gaugeThickness.HasValue)
        {
            throw Guard.Refused(nameof(gaugeThickness), "gaugeThickness was never measured; for no gauge leave it out.");
        }

        Guard.NonNegative(gaugeThickness.SiValue, nameof(gaugeThickness));
        ContactEvidence evidence = ContactEvidence.Weigh(copy);
        return new ContactTransition(evidence.Contact, gaugeThickness, evidence.Curve, evidence.Findings);
    }

    /// <summary>Height at which the bare nozzle touches the surface, where the trials hold it.</summary>
    /// <param name="height">The height.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetSurfaceHeight(out Measured<Length> height)
    {
        height = _contact.HasValue ? SurfaceHeight : default;
        return _contact.HasValue;
    }

    /// <summary>The spread s: a quarter to three quarters of the trials touch within 2.2 s; nothing when the answers change sides only once.</summary>
    /// <param name="spread">The spread.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetSpread(out Measured<Length> spread)
    {
        spread = _curve is LogisticSolution curve ? Measured<Length>.FromSi(curve.Spread, Math.Sqrt(curve.SpreadVariance), curve.DegreesOfFreedom) : default;
        return _curve is not null;
    }

    /// <summary>The result as a probe point; the gauge's uncertainty is not in it, since it moves all points alike.</summary>
    /// <param name="x">Where it was made, along x.</param>
    /// <param name="y">Where it was made, along y.</param>
    /// <returns>A point at the surface height.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    /// <exception cref="IndeterminateException">The trials hold no contact.</exception>
    public ProbePoint At(Length x, Length y) =>
        ProbePoint.FromMeters(x.Meters, y.Meters, Contact.SiValue - GaugeThickness.SiValue, Contact.SiStandardUncertainty);

    /// <summary>Invariant text.</summary>
    /// <returns>The surface height, or why there is none.</returns>
    public override string ToString() => _contact.HasValue ? SurfaceHeight.ToString() : _findings[0].ToString();
}
