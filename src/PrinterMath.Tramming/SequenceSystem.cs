namespace PrinterMath.Tramming;

/// <summary>
/// The sequence as a linear model: heights less the moves that the stated leads demand = shape of the bed + offsets of the zero + prior-bound deviations of the response and errors of setting + noise.
/// Each prior N(0, 1) is one more row, which makes least squares the posterior mean and its inverse normal matrix the posterior covariance.
/// Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., 14.8; Henderson 1975, Biometrics 31, 423, for tests with random effects (both from memory).
/// </summary>
internal sealed class SequenceSystem
{
    /// <summary>Common factor of all leads, among the leads let loose.</summary>
    internal const int AllScrews = -1;

    /// <summary>What a lead that is let loose may be off, a standard deviation in nominal leads: dead and reversed screws lie within two.</summary>
    private const double Released = 1;

    private readonly List<double[]> _priorColumns = [];
    private readonly List<(int Index, int Column, double Sigma)> _loadings = [];
    private readonly double[] _response;
    private readonly ColumnBasis _free;

    internal SequenceSystem(SequenceReadings readings, TrammingSequenceOptions options, IReadOnlyCollection<int> released, IEnumerable<double[]> accepted, ScrewPlay? play)
    {
        Readings = readings;
        int screws = readings.Screws.Length;
        for (int of = 0; of < screws; of++)
        {
            for (int at = 0; at < screws; at++)
            {
                AddResponse(at, of, released.Contains(of) && at == of ? Released * readings.Screws[of].Thread.Lead.SiValue : Sigma(readings.Screws[of], at == of, options));
            }
        }

        if (released.Contains(AllScrews))
        {
            AddCommonFactor();
        }

        for (int screw = 0; screw < screws; screw++)
        {
            for (int pass = 1; pass < readings.Passes; pass++)
            {
                AddSetting(screw, pass, options.TurnUncertainty.Revolutions * readings.Screws[screw].Thread.Lead.SiValue);
            }
        }

        _priorColumns.AddRange(play?.Unknowns(readings) ?? []);
        int rows = readings.Count + _priorColumns.Count;
        double reference = readings.Height(0);
        double[] lost = play?.Lost(readings, play.Gap) ?? new double[readings.Count];
        double[] heights = readings.Column(i => readings.Height(i) - reference - Demanded(i));
        _response = Pad([.. heights.Zip(lost, (height, l) => height - l)], rows);
        _free = new ColumnBasis(readings.Place, readings.RootWeight, readings.PlacesAreShared ? readings.Places : 0);
        foreach (double[] column in readings.ShapeOfBed().Concat(options.ZeroIsKept ? [] : Offsets()).Concat(accepted))
        {
            _free.Add(Pad(column, rows));
        }

        for (int i = 0; i < _priorColumns.Count; i++)
        {
            double[] column = Pad(_priorColumns[i], rows);
            column[readings.Count + i] = 1;
            _priorColumns[i] = column;
        }
    }

    internal SequenceReadings Readings { get; }

    internal SequenceFit Fit(params IEnumerable<double[]> extra)
    {
        ColumnBasis basis = _free.Copy();
        foreach (double[] column in extra)
        {
            basis.Add(Pad(column, _response.Length));
        }

        foreach (double[] column in _priorColumns)
        {
            basis.Add(column);
        }

        double[] rest = [.. _response];
        basis.Remove(rest);
        return new SequenceFit(basis, rest, Readings.Count, Readings.IsStated ? 0 : Readings.Count - _free.Rank);
    }

    internal LearnedResponse Learn()
    {
        int m = _priorColumns.Count;
        double[] y = [.. _response];
        _free.Remove(y);
        double[][] columns = [.. _priorColumns.Select(column =>
        {
            double[] rest = [.. column];
            _free.Remove(rest);
            return rest;
        })];
        double[] gram = new double[m * m];
        double[] inverse = new double[m * m];
        for (int i = 0; i < gram.Length; i++)
        {
            gram[i] = ColumnBasis.Dot(columns[i / m], columns[i % m]);
        }

        if (m > 0 && !SmallInverse.TryInvert(gram, m, inverse))
        {
            throw new InvalidOperationException("Normal equations with a prior for every unknown are not singular.");
        }

        double[] right = [.. columns.Select(column => ColumnBasis.Dot(column, y))];
        int screws = Readings.Screws.Length;
        double[] mean = new double[screws * screws];
        double[] covariance = new double[mean.Length * mean.Length];
        for (int k = 0; k < screws; k++)
        {
            mean[(k * screws) + k] = Readings.Screws[k].Thread.Lead.SiValue;
        }

        foreach ((int one, int column, double sigma) in _loadings)
        {
            mean[one] += sigma * ColumnBasis.Dot(inverse.AsSpan(column * m, m), right);
            foreach ((int other, int with, double tau) in _loadings)
            {
                covariance[(one * mean.Length) + other] += sigma * tau * (inverse[(column * m) + with] + inverse[(with * m) + column]) / 2;
            }
        }

        return new LearnedResponse(screws, mean, covariance);
    }

    internal static double Sigma(AdjustingScrew screw, bool own, TrammingSequenceOptions options)
    {
        double lead = screw.Thread.Lead.SiValue;
        double relative = own ? options.RelativeLeadUncertainty : options.CrossCoupling;
        double stated = own ? screw.Thread.Lead.SiStandardUncertainty : 0;
        return Math.Sqrt((relative * relative * lead * lead) + (stated * stated));
    }

    private static double[] Pad(double[] column, int rows)
    {
        double[] padded = new double[rows];
        column.CopyTo(padded, 0);
        return padded;
    }

    private void AddResponse(int at, int of, double sigma)
    {
        if (sigma > 0)
        {
            double[] turned = Readings.Turned[of];
            _loadings.Add(((at * Readings.Screws.Length) + of, _priorColumns.Count, sigma));
            _priorColumns.Add(Readings.Column(i => sigma * Readings.Influence(i, at) * turned[Readings.Pass[i]]));
        }
    }

    private void AddCommonFactor()
    {
        int screws = Readings.Screws.Length;
        for (int k = 0; k < screws; k++)
        {
            _loadings.Add(((k * screws) + k, _priorColumns.Count, Released * Readings.Screws[k].Thread.Lead.SiValue));
        }

        _priorColumns.Add(Readings.Column(i => Released * Demanded(i)));
    }

    private void AddSetting(int screw, int pass, double sigma)
    {
        if (sigma > 0 && Readings.Moves[screw][pass] != 0)
        {
            _priorColumns.Add(Readings.Column(i => Readings.Pass[i] >= pass ? sigma * Readings.Influence(i, screw) : 0));
        }
    }

    private double Demanded(int row)
    {
        double sum = 0;
        for (int k = 0; k < Readings.Screws.Length; k++)
        {
            sum += Readings.Influence(row, k) * Readings.Screws[k].Thread.Lead.SiValue * Readings.Turned[k][Readings.Pass[row]];
        }

        return sum;
    }

    private IEnumerable<double[]> Offsets() =>
        Enumerable.Range(1, Readings.Passes - 1).Select(pass => Readings.Column(i => Readings.Pass[i] == pass ? 1 : 0));
}
