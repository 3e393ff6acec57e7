using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>Where a player sits.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where the hands are on the plan.</param>
/// <param name="HandsMetres">Height of the hands above the level's floor, metres.</param>
/// <param name="FacingDegrees">Where the player looks, degrees anticlockwise from the x axis; null where not stated.</param>
/// <param name="RequiredDb">The required margin, dB.</param>
public sealed record Seat(string Name, int LevelIndex, Point2 Plan, double HandsMetres, double? FacingDegrees, double RequiredDb)
{
    /// <summary>The required margin where the file does not say, dB: common practice, see <c>materials/margins.yaml</c>.</summary>
    public const double UsualRequiredDb = 15;

    /// <summary>The fixture the player faces; null where the direction is in degrees or not stated.</summary>
    public string? Faces { get; init; }

    /// <summary>Days of a month on which it is used; only the ratios between seats matter.</summary>
    public double UsedDays { get; init; } = Use.DailyDays;

    /// <summary>The spot of the one console that is played here; null where it is any console.</summary>
    public string? Plays { get; init; }

    /// <summary>The seat it is one player of, where several play from one; null for a seat of one player.</summary>
    public string? Group { get; init; }

    /// <summary>The name of the seat as it was written: its players share it.</summary>
    public string WrittenName => Group ?? Name;

    /// <summary>Whether a console at a spot is played from here.</summary>
    public bool IsPlayedAt(Spot spot) => Plays is null || Plays == spot.Name;
}

/// <summary>Where somebody looks, in degrees anticlockwise from the x axis, 0 to below 360.</summary>
public static class Facing
{
    /// <summary>From one place towards another; the two differ.</summary>
    public static double Degrees(Point2 from, Point2 towards) =>
        Once(double.RadiansToDegrees(Math.Atan2(towards.Y - from.Y, towards.X - from.X)));

    /// <summary>The same direction as an angle of less than one turn.</summary>
    public static double Once(double degrees) => ((degrees % 360) + 360) % 360;
}

/// <summary>Days of a month for each word that says how often a seat is used.</summary>
public static class Use
{
    /// <summary>Every day.</summary>
    public const double DailyDays = 30;

    /// <summary>Once a week.</summary>
    public const double WeeklyDays = 4;

    /// <summary>Once a month.</summary>
    public const double RarelyDays = 1;
}
