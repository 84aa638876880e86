using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.Tramming;

/// <summary>A search for the height at which the nozzle touches, by trying heights and seeing: which height next, when to stop, and what was found. Heights are positive upwards.</summary>
/// <remarks>
/// <para>From the start the search comes down in steps that never exceed D − e, D the allowed overshoot and e the largest error of a reading. Every height it goes on
/// from was found clear, so that the contact lies at most e above it: no height is ever more than D below first contact. After a contact it retracts past the
/// backlash and narrows the bracket, halving it or with finer steps, at heights above one that touched already. The contact lies between the highest touching height
/// less e and the lowest clear height plus e.</para>
/// <para>At most <see cref="MostTrials"/> trials are needed. Immutable: each answer gives a new search.</para>
/// <para>Caution: a hot nozzle and a hot bed burn, and a closing gap pinches. Never drive the nozzle into the bed: stop at the first contact, and do not go below the height
/// that is asked for.</para>
/// <para>Source: the bracket as a rectangular distribution, JCGM 100:2008 (GUM), 4.3.7; the order of moves is common practice, no source.</para>
/// </remarks>
/// <example><code>
/// ContactSearch search = ContactSearch.Between(start: Length.FromMillimeters(1), lowest: Length.FromMillimeters(-1));
/// while (search.TryGetNext(out ContactMove? move)) { search = search.With(TryAt(move)); }
/// if (search.TryGetReading(out ContactReading? reading)) { Console.WriteLine(reading); }
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class ContactSearch
{
    private readonly ContactGrid _grid;
    private readonly ContactBracket _bracket;
    private readonly ContactTrial[] _trials;

    private ContactSearch(ContactGrid grid, ContactBracket bracket, ContactTrial[] trials)
    {
        _grid = grid;
        _bracket = bracket;
        _trials = trials;
        State = grid.StateOf(bracket);
    }

    /// <summary>The trials so far, in order.</summary>
    public IReadOnlyList<ContactTrial> Trials => Array.AsReadOnly(_trials);

    /// <summary>Whether to go on.</summary>
    public ContactSearchState State { get; }

    /// <summary>A number of trials, the first included, within which the search ends when its advice is followed.</summary>
    public int MostTrials => _grid.MostTrials;

    /// <summary>What was noticed: <c>contact.start.touching</c>, <c>contact.none</c>, <c>contact.contradiction</c> (blocking), <c>contact.overshoot</c> (caution).</summary>
    public IReadOnlyList<Finding> Findings => [.. ContactFindings.Of(this, _grid, _bracket)];

    /// <summary>What to do next.</summary>
    /// <exception cref="InvalidOperationException">The search has ended, see <see cref="State"/>.</exception>
    public ContactMove Next => TryGetNext(out ContactMove? move)
        ? move
        : throw new InvalidOperationException($"The search has ended ({State}); there is no next height.");

    /// <summary>The bracket as a reading by light or bare contact; for a gauge see <see cref="TryGetReading"/>.</summary>
    /// <exception cref="IndeterminateException">There is no bracket.</exception>
    public ContactReading Reading => TryGetReading(out ContactReading? reading)
        ? reading
        : throw new IndeterminateException(Findings.FirstOrDefault(finding => finding.Severity == FindingSeverity.Blocking) ?? ContactFindings.NotYet());

    /// <summary>A search that has not begun.</summary>
    /// <param name="start">Height to begin at, where there is light under the nozzle.</param>
    /// <param name="lowest">Height below which not to search, below the start by at most 100 mm.</param>
    /// <param name="options">Overshoot, finest step, backlash; null for the defaults.</param>
    /// <returns>The search.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A height or an option is out of range.</exception>
    public static ContactSearch Between(Length start, Length lowest, ContactSearchOptions? options = null) =>
        new(ContactGrid.Of(start, lowest, options ?? new ContactSearchOptions()), default, []);

    /// <summary>The search with the answer at the height it asked for.</summary>
    /// <param name="outcome">What was found at <see cref="Next"/>.</param>
    /// <returns>A new search; this one stays as it is.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The outcome is not one of those named.</exception>
    /// <exception cref="InvalidOperationException">The search has ended.</exception>
    public ContactSearch With(ContactOutcome outcome) => With(ContactTrial.At(Next.Height, outcome));

    /// <summary>The search with a trial at a height of one's own.</summary>
    /// <param name="trial">The trial; made from above, past the backlash.</param>
    /// <returns>A new search; this one stays as it is. A height that went too far below contact becomes a finding.</returns>
    public ContactSearch With(ContactTrial trial) => new(_grid, _grid.After(_bracket, trial), [.. _trials, trial]);

    /// <summary>What to do next, unless the search has ended.</summary>
    /// <param name="move">The move, or null.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryGetNext([NotNullWhen(true)] out ContactMove? move)
    {
        move = State == ContactSearchState.Running ? _grid.MoveFrom(_bracket) : null;
        return move is not null;
    }

    /// <summary>The bracket as a reading, widened by the largest error of a reading; available while the search still runs.</summary>
    /// <param name="reading">The reading, or null when one side is missing or the answers contradict each other.</param>
    /// <param name="gaugeThickness">Thickness of the gauge between nozzle and surface; left out, there is none.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative.</exception>
    public bool TryGetReading([NotNullWhen(true)] out ContactReading? reading, Measured<Length> gaugeThickness = default)
    {
        reading = State != ContactSearchState.Contradictory && _bracket is { Clear: double clear, Touching: double touching }
            ? ContactReading.WithGauge(
                Length.FromMeters(clear + _grid.ReadingError),
                Length.FromMeters(touching - _grid.ReadingError),
                gaugeThickness.HasValue ? gaugeThickness : Measured.Exact(Length.Zero))
            : null;
        return reading is not null;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Number of trials, state, and what to do next or what was found.</returns>
    public override string ToString() =>
        $"{_trials.Length} trials, {State}{(TryGetNext(out ContactMove? move) ? $", {move}" : TryGetReading(out ContactReading? reading) ? $", {reading}" : string.Empty)}";
}
