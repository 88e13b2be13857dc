namespace PressRun.Engine.Reprint;

/// <summary>What is known of the copies that will be asked for within the horizon.</summary>
/// <param name="Committed">Whole copies already promised; demand is that many plus the distribution. 0 or more.</param>
public abstract record Demand(int Committed)
{
    /// <summary>The same demand at another pace; what is promised stays promised.</summary>
    /// <param name="pace">Factor on what is asked for, more than 0; 1 changes nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pace is not more than 0.</exception>
    public Demand AtPace(decimal pace)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pace);
        return Paced(pace);
    }

    private protected abstract Demand Paced(decimal pace);
}

/// <summary>Probabilities named one by one. Equal to another of the same ones.</summary>
/// <param name="Probabilities">Of 0, 1, 2, ... copies; not negative, summing to 1 within 1e-9.</param>
/// <param name="Committed">Copies promised besides.</param>
public sealed record TableDemand(IReadOnlyList<decimal> Probabilities, int Committed) : Demand(Committed)
{
    // Each count goes to the whole number nearest to it at that pace.
    private protected override Demand Paced(decimal pace)
    {
        var paced = new decimal[Probabilities.Count == 0 ? 0 : Times(Probabilities.Count - 1, pace) + 1];
        for (var copies = 0; copies < Probabilities.Count; copies++)
        {
            paced[Times(copies, pace)] += Probabilities[copies];
        }

        return this with { Probabilities = paced };
    }

    /// <inheritdoc/>
    public bool Equals(TableDemand? other) => base.Equals(other) && Probabilities.SequenceEqual(other.Probabilities);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(base.GetHashCode(), Probabilities.Count);

    private static int Times(int copies, decimal pace) => (int)decimal.Round(copies * pace, MidpointRounding.AwayFromZero);
}

/// <summary>A Poisson distribution.</summary>
/// <param name="Mean">Copies, 0 or more.</param>
/// <param name="Committed">Copies promised besides.</param>
public sealed record PoissonDemand(decimal Mean, int Committed) : Demand(Committed)
{
    private protected override Demand Paced(decimal pace) => this with { Mean = Mean * pace };
}

/// <summary>A negative binomial distribution: wider than Poisson by mean² / shape.</summary>
/// <param name="Mean">Copies, 0 or more.</param>
/// <param name="Shape">More than 0.</param>
/// <param name="Committed">Copies promised besides.</param>
public sealed record NegativeBinomialDemand(decimal Mean, decimal Shape, int Committed) : Demand(Committed)
{
    private protected override Demand Paced(decimal pace) => this with { Mean = Mean * pace };
}

/// <summary>
/// Sales of past periods of equal length. With a Gamma prior on the rate of sale the copies sold over the horizon are negative binomial
/// (Gamma–Poisson conjugacy: Gelman and others, Bayesian Data Analysis, section 2.6). Equal to another of the same periods and figures.
/// </summary>
/// <param name="Periods">Copies sold in each, 0 or more.</param>
/// <param name="HorizonPeriods">Length of the horizon in periods, more than 0.</param>
/// <param name="Uplift">Factor on the rate, more than 0; 1 where nothing special is ahead.</param>
/// <param name="PriorShape">Shape of the Gamma prior, 0 or more.</param>
/// <param name="PriorRate">Rate of the Gamma prior in periods, 0 or more.</param>
/// <param name="Committed">Copies promised besides.</param>
public sealed record HistoryDemand(
    IReadOnlyList<int> Periods, decimal HorizonPeriods, decimal Uplift, decimal PriorShape, decimal PriorRate, int Committed) : Demand(Committed)
{
    /// <inheritdoc/>
    public bool Equals(HistoryDemand? other) =>
        base.Equals(other)
        && (HorizonPeriods, Uplift, PriorShape, PriorRate) == (other.HorizonPeriods, other.Uplift, other.PriorShape, other.PriorRate)
        && Periods.SequenceEqual(other.Periods);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(base.GetHashCode(), HorizonPeriods, Uplift, PriorShape, PriorRate, Periods.Count);

    private protected override Demand Paced(decimal pace) => this with { Uplift = Uplift * pace };
}

/// <summary>An opinion: the triangular distribution on [low, high] with its peak at likely, whole copies taking the mass half a copy around them.</summary>
/// <param name="Low">Not above likely.</param>
/// <param name="Likely">Between them.</param>
/// <param name="High">Not below likely, more than low.</param>
/// <param name="Committed">Copies promised besides.</param>
public sealed record OpinionDemand(decimal Low, decimal Likely, decimal High, int Committed) : Demand(Committed)
{
    private protected override Demand Paced(decimal pace) => this with { Low = Low * pace, Likely = Likely * pace, High = High * pace };
}
