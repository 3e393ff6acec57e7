using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Links;

/// <summary>The itemised sum of one link, from transmit power to margin.</summary>
/// <param name="Spot">Where the console stands.</param>
/// <param name="Seat">Where the player sits.</param>
/// <param name="DistanceMetres">Straight distance, metres.</param>
/// <param name="Frequency">The frequency whose free-space loss is the mean over the band.</param>
/// <param name="Paths">The paths, strongest first.</param>
/// <param name="PathLossDb">Loss of all paths together, by the sum of their powers, dB.</param>
/// <param name="Directions">Controller to console, then console to controller.</param>
/// <param name="MarginDb">The worse of the two directions' margins, dB.</param>
public sealed record LinkBudget(
    Spot Spot,
    Seat Seat,
    double DistanceMetres,
    Frequency Frequency,
    IReadOnlyList<PathBudget> Paths,
    double PathLossDb,
    IReadOnlyList<DirectionBudget> Directions,
    double MarginDb)
{
    /// <summary>
    /// Share of the power from which a path's cautions apply to the link: without that share the link would be 0.5 dB weaker.
    /// </summary>
    public const double LeastShareOfCaution = 0.1;

    /// <summary>Cautions of the paths that bring at least <see cref="LeastShareOfCaution"/> of the power, each once.</summary>
    public IReadOnlyList<string> Cautions =>
        [.. Paths.Where(path => ShareOf(path) >= LeastShareOfCaution).SelectMany(path => path.Cautions).Distinct()];

    /// <summary>The direction with the smaller margin: the one that decides.</summary>
    public DirectionBudget WorseDirection => Directions.MinBy(direction => direction.MarginDb)
        ?? throw new InvalidOperationException("A budget has two directions.");

    /// <summary>Other seats whose people count as obstacles.</summary>
    public IReadOnlyList<Seat> Occupied { get; init; } = [];

    /// <summary>Power of the strongest path above the sum of all others, dB; null where it is alone.</summary>
    public double? StrongestOverRestDb
    {
        get
        {
            double rest = Paths.Skip(1).Sum(path => Decibels.ToPowerRatio(-path.LossDb));
            return rest > 0 ? -Paths[0].LossDb - Decibels.FromPowerRatio(rest) : null;
        }
    }

    /// <summary>Root mean square spread of the paths' delays, each by its share of the power, nanoseconds.</summary>
    public double DelaySpreadNanoseconds
    {
        get
        {
            double all = 0, first = 0, second = 0;
            foreach (PathBudget path in Paths)
            {
                double power = Decibels.ToPowerRatio(Paths[0].LossDb - path.LossDb);
                double delay = path.Path.LengthMetres / Quantities.Frequency.SpeedOfLight * 1e9;
                all += power;
                first += power * delay;
                second += power * delay * delay;
            }

            return Math.Sqrt(Math.Max(0, (second / all) - (first / all * (first / all))));
        }
    }

    /// <summary>
    /// One path's share of the power that arrives, 0 to 1. It is a share of the powers listed, so that neither rounding nor the
    /// greatest reported loss gives a share above 1.
    /// </summary>
    public double ShareOf(PathBudget path)
    {
        ArgumentNullException.ThrowIfNull(path);
        double all = Paths.Sum(other => Decibels.ToPowerRatio(Paths[0].LossDb - other.LossDb));
        return Decibels.ToPowerRatio(Paths[0].LossDb - path.LossDb) / all;
    }

    /// <summary>The required margin, dB.</summary>
    public double RequiredDb => Seat.RequiredDb;

    /// <summary>Margin minus the required margin, dB; below 0 the seat does not pass.</summary>
    public double HeadroomDb => MarginDb - RequiredDb;

    /// <summary>Whether the margin is at least what the seat requires.</summary>
    public bool Passes => HeadroomDb >= 0;
}
