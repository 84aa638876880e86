namespace PrinterMath.Measurement;

/// <summary>Finds what would decide an undecided verdict if the value stays where it is.</summary>
internal static class LimitationSearch
{
    /// <summary>An improvement by more than this factor is not practical advice.</summary>
    private const double LargestImprovement = 10;

    /// <summary>Repeating more often than this is not practical advice.</summary>
    private const double MostObservations = 200;
    private const int Bisections = 60;

    internal static Limitation Find(
        double lower, double upper, double y, double u, double degreesOfFreedom, double risk, string ucumUnit, IReadOnlyList<BudgetLine>? lines)
    {
        double smallest = u / LargestImprovement;
        if (!Decided(smallest))
        {
            return new Limitation(LimitationKind.ValueAtLimit, 0, ucumUnit);
        }

        double decided = smallest, undecided = u;
        for (int i = 0; i < Bisections; i++)
        {
            double middle = (decided + undecided) / 2;
            (decided, undecided) = Decided(middle) ? (middle, undecided) : (decided, middle);
        }

        return lines is null ? new Limitation(LimitationKind.ReduceUncertainty, decided, ucumUnit) : FromBudget(u, decided, ucumUnit, lines);

        bool Decided(double trial) =>
            VerdictRule.Conclude(TailProbabilities.Of(lower, upper, y, trial, degreesOfFreedom), risk) != Conclusion.Undecided;
    }

    /// <summary>Repeat if that alone is enough; else improve the largest input, if that alone is enough.</summary>
    private static Limitation FromBudget(double u, double required, string ucumUnit, IReadOnlyList<BudgetLine> lines)
    {
        double excess = (u * u) - (required * required);
        BudgetLine? repeat = lines.FirstOrDefault(line => line.Input.Observations is not null && Remaining(line) > 0);
        if (repeat is not null)
        {
            double times = Variance(repeat) / Remaining(repeat);
            double observations = Math.Ceiling((repeat.Input.Observations ?? 1) * times);
            if (observations <= MostObservations)
            {
                return new Limitation(LimitationKind.Repeat, required, ucumUnit, repeat.Input.Name, (int)observations);
            }
        }

        BudgetLine? improve = lines.FirstOrDefault(line => Remaining(line) > 0);
        return improve is null
            ? new Limitation(LimitationKind.ReduceUncertainty, required, ucumUnit)
            : new Limitation(
                LimitationKind.ImproveInput, Math.Sqrt(Remaining(improve)) / Math.Abs(improve.SiSensitivity), improve.Input.UcumUnit, improve.Input.Name);

        double Variance(BudgetLine line) => line.SiContribution * line.SiContribution;

        double Remaining(BudgetLine line) => Variance(line) - excess;
    }
}
