using System.Diagnostics;
using System.Globalization;
using PrinterMath.Measurement;
using UnitsNet;

namespace PrinterMath.SurfaceMesh;

/// <summary>Maps of one bed at several temperatures, and the map at a temperature between them.</summary>
/// <remarks>
/// Between two temperatures each node's height goes along a straight line: z = (1 − w)·z₁ + w·z₂, u² = (1 − w)²u₁² + w²u₂². A bed that bows by a gradient through its thickness bows in proportion to it, but a bed that clamps or slips
/// does not: with three maps or more <see cref="TryGetLargestBend"/> says how far a map lies from the line between its neighbours. No map is made up outside the temperatures that were probed.
/// Source: linear interpolation; JCGM 100:2008, 5.1.2, for the uncertainty.
/// </remarks>
/// <example><code>
/// HeatedMaps maps = HeatedMaps.Of(HeatedMap.At(Temperature.FromDegreesCelsius(25), cold), HeatedMap.At(Temperature.FromDegreesCelsius(90), hot));
/// BicubicModel model = BicubicModel.Through(maps.At(Temperature.FromDegreesCelsius(60)));
/// </code></example>
[DebuggerDisplay("{ToString(),nq}")]
public sealed class HeatedMaps
{
    private readonly HeatedMap[] _maps;

    private HeatedMaps(HeatedMap[] maps) => _maps = maps;

    /// <summary>The maps, the coldest first.</summary>
    public IReadOnlyList<HeatedMap> Maps => Array.AsReadOnly(_maps);

    /// <summary>Maps of one bed.</summary>
    /// <param name="maps">Two or more at different temperatures, of the same nodes to within a hundredth of the smallest spacing.</param>
    /// <returns>The maps, sorted.</returns>
    /// <exception cref="ArgumentException">There are fewer than two, two share a temperature, or their nodes differ.</exception>
    public static HeatedMaps Of(params IReadOnlyList<HeatedMap> maps)
    {
        HeatedMap[] sorted = [.. Guard.NotNull(maps).OrderBy(map => map.Kelvins)];
        if (sorted.Length < 2)
        {
            throw Guard.Refused(nameof(maps), FormattableString.Invariant($"{sorted.Length} maps hold no course over temperature; two are needed."));
        }

        for (int i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].Kelvins == sorted[i - 1].Kelvins)
            {
                throw Guard.Refused(nameof(maps), FormattableString.Invariant($"Two maps are at {sorted[i].Kelvins - 273.15:0.##} °C; average them first."));
            }

            if (!sorted[i].Grid.HasSameNodesAs(sorted[0].Grid))
            {
                throw Guard.Refused(nameof(maps), $"The nodes of {sorted[i]} are not those of {sorted[0]}.");
            }
        }

        return new HeatedMaps(sorted);
    }

    /// <summary>The map at a temperature.</summary>
    /// <param name="temperature">From the coldest to the hottest of <see cref="Maps"/>, both included.</param>
    /// <returns>The nodes that both neighbours hold, with their uncertainty where both know it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside.</exception>
    /// <exception cref="ArgumentException">The two neighbours share too few nodes for a grid.</exception>
    public ProbedGrid At(Temperature temperature)
    {
        double kelvins = Guard.Between(temperature.Kelvins, _maps[0].Kelvins, _maps[^1].Kelvins, nameof(temperature));
        int upper = Math.Max(1, Array.FindIndex(_maps, map => map.Kelvins >= kelvins));
        return ProbedGrid.FromPoints([.. Between(_maps[upper - 1], _maps[upper], kelvins).Select(node => node.Point)]);
    }

    /// <summary>How far a map lies from the straight line between its neighbours, at the node where that is most; its uncertainty where all three maps know theirs.</summary>
    /// <param name="bend">Height above the line, positive upwards, or the default.</param>
    /// <param name="temperature">At which temperature, or the default.</param>
    /// <returns>False with two maps, or where an uncertainty is not known.</returns>
    public bool TryGetLargestBend(out Measured<Length> bend, out Temperature temperature)
    {
        (bend, temperature) = (default, default);
        for (int i = 1; i + 1 < _maps.Length; i++)
        {
            GridNodes own = _maps[i].Grid.Nodes;
            foreach ((GridNode at, ProbePoint line) in Between(_maps[i - 1], _maps[i + 1], _maps[i].Kelvins))
            {
                int k = own.Index(at.Column, at.Row);
                double off = own.Heights[k] - line.ZMeters;
                if (own.Readings[k] > 0 && own.HasUncertainty && line.HasUncertainty && (!bend.HasValue || Math.Abs(off) > Math.Abs(bend.SiValue)))
                {
                    bend = Measured<Length>.FromSi(off, double.Hypot(own.StandardUncertainties[k], line.StandardUncertaintyMeters));
                    temperature = _maps[i].Temperature;
                }
            }
        }

        return bend.HasValue;
    }

    /// <summary>Invariant text.</summary>
    /// <returns>Number of maps and their range.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{_maps.Length} maps from {_maps[0].Kelvins - 273.15:0.#} to {_maps[^1].Kelvins - 273.15:0.#} °C");

    private static IEnumerable<(GridNode At, ProbePoint Point)> Between(HeatedMap cold, HeatedMap hot, double kelvins)
    {
        double w = (kelvins - cold.Kelvins) / (hot.Kelvins - cold.Kelvins);
        GridNodes a = cold.Grid.Nodes, b = hot.Grid.Nodes;
        bool known = a.HasUncertainty && b.HasUncertainty;
        for (int row = 0; row < cold.Grid.Rows; row++)
        {
            for (int column = 0; column < cold.Grid.Columns; column++)
            {
                int k = a.Index(column, row);
                if (a.Readings[k] > 0 && b.Readings[k] > 0)
                {
                    double u = known ? double.Hypot((1 - w) * a.StandardUncertainties[k], w * b.StandardUncertainties[k]) : 0;
                    yield return (new GridNode(column, row), ProbePoint.FromMeters(a.X.Nodes[column], a.Y.Nodes[row], ((1 - w) * a.Heights[k]) + (w * b.Heights[k]), u));
                }
            }
        }
    }
}
