using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Files.Json;

/// <summary>One link's budget, as JSON.</summary>
/// <param name="House">The house's name.</param>
/// <param name="Spot">The spot's name.</param>
/// <param name="Seat">The seat's name.</param>
/// <param name="Occupied">Other seats with people who obstruct other links.</param>
/// <param name="DistanceM">Straight distance, metres.</param>
/// <param name="FrequencyMHz">The frequency whose free-space loss is the mean over the band, MHz.</param>
/// <param name="Paths">The paths, strongest first.</param>
/// <param name="PathLossDb">Loss of all paths together, dB.</param>
/// <param name="StrongestOverRestDb">Power of the strongest path over that of all others, dB; omitted if it is the only one.</param>
/// <param name="DelaySpreadNs">Root mean square spread of the paths' delays, nanoseconds.</param>
/// <param name="Directions">Controller to console, then console to controller.</param>
/// <param name="TableMedianDb">The worse of the two directions' margins with every loss at its table median, dB: the sum of the lines.</param>
/// <param name="RequiredDb">What the seat requires, dB.</param>
/// <param name="HeadroomDb">The margin to count on less the required margin, dB; from the median if no uncertainty was computed.</param>
/// <param name="Passes">Whether that margin reaches the required margin.</param>
public sealed record BudgetDocument(
    string House,
    string Spot,
    string Seat,
    IReadOnlyList<string> Occupied,
    double DistanceM,
    double FrequencyMHz,
    IReadOnlyList<PathDocument> Paths,
    double PathLossDb,
    double? StrongestOverRestDb,
    double DelaySpreadNs,
    IReadOnlyList<DirectionDocument> Directions,
    double TableMedianDb,
    double RequiredDb,
    double HeadroomDb,
    bool Passes)
{
    /// <summary>What differs from the house file; omitted if nothing does.</summary>
    public IReadOnlyList<string>? WhatIf { get; init; }

    /// <summary>How many measurements the losses were fitted to; omitted for table losses.</summary>
    public int? FittedToMeasurements { get; init; }

    /// <summary>The median margin over the drawn houses, dB; omitted, like all below, if no uncertainty was computed.</summary>
    public double? MedianDb { get; init; }

    /// <summary>The margin to count on, dB.</summary>
    public double? MarginAtConfidenceDb { get; init; }

    /// <summary>Share of cases in which the margin is at least this, 0 to 1.</summary>
    public double? Confidence { get; init; }

    /// <summary>One standard deviation of the margin, dB.</summary>
    public double? SpreadDb { get; init; }

    /// <summary>Probability that the seat passes, 0 to 1.</summary>
    public double? ProbabilityPasses { get; init; }

    /// <summary>Cautions about paths with a tenth or more of the power; those of the others are listed with each path.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Assumptions of the house file that this margin depends on, largest effect first; omitted if not requested.</summary>
    public IReadOnlyList<AssumptionDocument>? Assumptions { get; init; }

    /// <summary>The picture of them; omitted if not requested.</summary>
    public string? Picture { get; init; }

    /// <summary>A budget with its uncertainty.</summary>
    public static BudgetDocument Of(House house, LinkBudget budget, HouseUncertainty? uncertainty)
    {
        BudgetDocument plain = Of(house, budget);
        return uncertainty is null ? plain : plain with
        {
            HeadroomDb = uncertainty.AtConfidence.HeadroomDb(budget),
            Passes = uncertainty.AtConfidence.Passes(budget),
            MedianDb = uncertainty.With(budget).MedianDb,
            MarginAtConfidenceDb = uncertainty.MarginAtConfidenceDb(budget),
            Confidence = uncertainty.Confidence,
            SpreadDb = uncertainty.With(budget).SpreadDb,
            ProbabilityPasses = uncertainty.ProbabilityPasses(budget),
        };
    }

    /// <summary>A budget as a document.</summary>
    public static BudgetDocument Of(House house, LinkBudget budget) => new(
        house.Name,
        budget.Spot.Name,
        budget.Seat.Name,
        [.. budget.Occupied.Select(seat => seat.Name)],
        budget.DistanceMetres,
        budget.Frequency.Megahertz,
        [.. budget.Paths.Select(path => PathDocument.Of(house, budget, path))],
        budget.PathLossDb,
        budget.StrongestOverRestDb,
        budget.DelaySpreadNanoseconds,
        [.. budget.Directions.Select(DirectionDocument.Of)],
        budget.MarginDb,
        budget.RequiredDb,
        budget.HeadroomDb,
        budget.Passes)
    {
        Cautions = budget.Cautions,
    };
}

/// <summary>One direction of a link, as JSON.</summary>
/// <param name="From">The sending end.</param>
/// <param name="To">The receiving end.</param>
/// <param name="TransmitDbm">Power into the sender's antenna, dBm.</param>
/// <param name="AntennaGainsDb">Both antennas' mean gains together, dB.</param>
/// <param name="HandAndBodyDb">Allowance for the grip, dB.</param>
/// <param name="PolarisationMismatchDb">Loss from the different polarisations of the two antennas, dB.</param>
/// <param name="ReceivedDbm">Local mean level at the receiver, dBm.</param>
/// <param name="SensitivityDbm">The receiver's sensitivity, dBm.</param>
/// <param name="TableMedianDb">Received level less sensitivity, dB: a median margin, since every loss is its table median.</param>
public sealed record DirectionDocument(
    string From,
    string To,
    double TransmitDbm,
    double AntennaGainsDb,
    double HandAndBodyDb,
    double PolarisationMismatchDb,
    double ReceivedDbm,
    double SensitivityDbm,
    double TableMedianDb)
{
    internal static DirectionDocument Of(DirectionBudget direction) => new(
        direction.From,
        direction.To,
        direction.TransmitDbm,
        direction.AntennaGainsDb,
        direction.HandAndBodyDb,
        direction.PolarisationDb,
        direction.ReceivedDbm,
        direction.SensitivityDbm,
        direction.MarginDb);
}

/// <summary>One path of a link, as JSON.</summary>
/// <param name="Kind"><c>direct</c>, <c>reflected</c>, <c>diffracted</c> or <c>diffuse</c>.</param>
/// <param name="Turns">The surfaces that reflect it and the edges that diffract it, in order from the spot.</param>
/// <param name="LengthM">Its length, metres.</param>
/// <param name="Share">Its share of the received power, 0 to 1.</param>
/// <param name="FreeSpaceDb">Free-space loss over its length, dB.</param>
/// <param name="EdgesDb">Diffraction at obstacles on or near the line, dB; below 0 where it adds power.</param>
/// <param name="ReflectionDb">Loss at reflecting surfaces, dB.</param>
/// <param name="SurfacesDb">Interference of the direct path with a reflection close to it, dB, in both figures; below 0 where it adds power.</param>
/// <param name="DiffractionDb">Diffraction loss at edges, dB.</param>
/// <param name="DiffuseDb">From the console's power to that of a uniform diffuse field at the player, dB.</param>
/// <param name="BodyDb">Loss from the player's own body, dB.</param>
/// <param name="LossDb">Total loss with the crossings, dB.</param>
/// <param name="Crossings">The obstacles on it, in order from the spot.</param>
public sealed record PathDocument(
    string Kind,
    IReadOnlyList<TurnDocument> Turns,
    double LengthM,
    double Share,
    double FreeSpaceDb,
    double EdgesDb,
    double ReflectionDb,
    double SurfacesDb,
    double DiffractionDb,
    double DiffuseDb,
    double BodyDb,
    double LossDb,
    IReadOnlyList<CrossingDocument> Crossings)
{
    /// <summary>One sentence for each formula that is used outside its published range.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The word for a kind of path.</summary>
    public static string WordFor(PathKind kind) => kind switch
    {
        PathKind.Direct => "direct",
        PathKind.Reflected => "reflected",
        PathKind.Diffracted => "diffracted",
        PathKind.Diffuse => "diffuse",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of path."),
    };

    internal static PathDocument Of(House house, LinkBudget link, PathBudget budget) => new(
        WordFor(budget.Path.Kind),
        [.. budget.Turns.Select(turn => TurnDocument.Of(house, turn))],
        budget.Path.LengthMetres,
        link.ShareOf(budget),
        budget.FreeSpaceDb,
        Unsigned(budget.EdgesDb),
        Unsigned(budget.ReflectionDb),
        Unsigned(budget.SurfacesDb),
        Unsigned(budget.DiffractionDb),
        Unsigned(budget.DiffuseDb),
        Unsigned(budget.BodyDb),
        budget.LossDb,
        [
            .. budget.Path.Crossings.Zip(budget.CrossingsDb, budget.Bases)
                .Select(item => CrossingDocument.Of(house, item.First, item.Second, item.Third)),
        ])
    {
        Cautions = budget.Cautions,
    };

    // A logarithm gives -0 for no loss, which JSON would show.
    private static double Unsigned(double db) => db == 0 ? 0 : db;
}

/// <summary>One obstacle on a path, as JSON.</summary>
/// <param name="Kind"><c>wall</c>, <c>opening</c>, <c>floor</c>, <c>joists</c>, <c>fixture</c> or <c>player</c>.</param>
/// <param name="Name">Which one.</param>
/// <param name="Material">What it is made of there.</param>
/// <param name="Level">The level it belongs to; a floor belongs to the level below it.</param>
/// <param name="AtM">Distance from the spot along the path, metres.</param>
/// <param name="IncidenceDeg">Angle to the surface's normal, degrees.</param>
/// <param name="Share">The share of the table loss that applies.</param>
/// <param name="LossDb">Its loss, dB.</param>
/// <param name="Basis">
/// How the loss is derived: <c>listed</c> (the table loss at every angle), <c>head-on</c> or <c>mean</c> (the table loss is for
/// normal incidence or a mean over angles, and the layers give its change with angle), <c>through</c> (the loss of the thing
/// itself, where the table loss includes paths around it), <c>joists</c> (the share of the path's width that they cover).
/// </param>
public sealed record CrossingDocument(
    string Kind,
    string Name,
    string Material,
    string Level,
    double AtM,
    double IncidenceDeg,
    double Share,
    double LossDb,
    string Basis)
{
    /// <summary>The word for a kind of obstacle.</summary>
    public static string WordFor(ObstacleKind kind) => kind switch
    {
        ObstacleKind.Wall => "wall",
        ObstacleKind.Opening => "opening",
        ObstacleKind.FloorLayer => "floor",
        ObstacleKind.Joists => "joists",
        ObstacleKind.Fixture => "fixture",
        ObstacleKind.Player => "player",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of obstacle."),
    };

    /// <summary>The word for how a loss is derived.</summary>
    public static string WordFor(LossBasis basis) => basis switch
    {
        LossBasis.Listed => "listed",
        LossBasis.HeadOnAndLayers => "head-on",
        LossBasis.MeanAndLayers => "mean",
        LossBasis.Through => "through",
        LossBasis.JoistShare => "joists",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "This is not what a loss can rest on."),
    };

    internal static CrossingDocument Of(House house, Crossing crossing, double lossDb, LossBasis basis) => new(
        WordFor(crossing.Kind),
        crossing.Name,
        crossing.Material.Name,
        house.Levels[crossing.LevelIndex].Name,
        crossing.DistanceMetres,
        crossing.IncidenceDegrees,
        crossing.Share,
        lossDb,
        WordFor(basis));
}

/// <summary>Where a path turns, as JSON.</summary>
/// <param name="Kind">
/// What reflects it: <c>wall</c>, <c>fixture</c>, <c>floor</c> or <c>ceiling</c>; or what diffracts it:
/// <c>opening</c>, <c>wall end</c> or <c>stair void</c>.
/// </param>
/// <param name="Name">Which one; for a floor, a ceiling or a stair void, its level.</param>
/// <param name="Level">The level it belongs to; a stair void belongs to the level below it.</param>
/// <param name="AtM">Distance from the spot along the path, metres.</param>
/// <param name="IncidenceDeg">Angle to the normal of the reflecting surface, degrees; omitted if it is not reflected.</param>
public sealed record TurnDocument(string Kind, string Name, string Level, double AtM, double? IncidenceDeg)
{
    /// <summary>The word for a kind of turn.</summary>
    public static string WordFor(TurnKind kind) => kind switch
    {
        TurnKind.Wall => "wall",
        TurnKind.Fixture => "fixture",
        TurnKind.Floor => "floor",
        TurnKind.Ceiling => "ceiling",
        TurnKind.Opening => "opening",
        TurnKind.WallEnd => "wall end",
        TurnKind.WallCorner => "wall corner",
        TurnKind.FixtureCorner => "fixture corner",
        TurnKind.StairVoid => "stair void",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not a kind of turn."),
    };

    internal static TurnDocument Of(House house, PathTurn turn) =>
        new(WordFor(turn.Kind), turn.Name, house.Levels[turn.LevelIndex].Name, turn.DistanceMetres, turn.IncidenceDegrees);
}
