using LinkMargin.Engine.Houses;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>
/// Allowed ranges and default values of a house file. The ranges are generous limits for a dwelling, chosen to catch wrong units
/// and signs; those of a radio are in <see cref="Tables.TableLimits"/>, because a house file and a table describe the same radios. The defaults
/// are common building practice, except where a comment says otherwise.
/// </summary>
internal static class HouseLimits
{
    /// <summary>East and north on a plan.</summary>
    public static readonly QuantityRange Coordinate = new(-1000, 1000, "m");

    /// <summary>A side of a room.</summary>
    public static readonly QuantityRange RoomSide = new(0.1, 500, "m");

    /// <summary>Floor to ceiling of a level.</summary>
    public static readonly QuantityRange LevelHeight = new(0.3, 30, "m");

    /// <summary>Height of a finished floor above the file's own zero.</summary>
    public static readonly QuantityRange Elevation = new(-100, 300, "m");

    /// <summary>A height above a level's floor.</summary>
    public static readonly QuantityRange HeightOverFloor = new(0, 30, "m");

    /// <summary>Bottom edge to top edge of a wall, door or window.</summary>
    public static readonly QuantityRange PanelHeight = new(0.01, 30, "m");

    /// <summary>Clear width of an opening.</summary>
    public static readonly QuantityRange OpeningWidth = new(0.05, 50, "m");

    /// <summary>From the end of a stretch of wall to an opening.</summary>
    public static readonly QuantityRange OpeningAt = new(0, 500, "m");

    /// <summary>Distance between the centres of joists.</summary>
    public static readonly QuantityRange JoistSpacing = new(0.05, 5, "m");

    /// <summary>An angle, up to one turn either way.</summary>
    public static readonly QuantityRange Angle = new(-360, 360, "deg");

    /// <summary>Smallest and largest side of a fixture.</summary>
    public static readonly QuantityRange FixtureSide = new(0.001, 100, "m");

    /// <summary>A required margin.</summary>
    public static readonly QuantityRange Required = new(0, 60, "dB");

    /// <summary>Days per month on which a seat is used.</summary>
    public static readonly QuantityRange UsedDays = new(0.1, 31, "");

    /// <summary>Players on one seat.</summary>
    public static readonly QuantityRange Players = new(1, 16, "");

    /// <summary>Diameter, or a clear side, of a cable passage.</summary>
    public static readonly QuantityRange PassageSide = new(0.003, 5, "m");

    /// <summary>90° bends in a passage.</summary>
    public static readonly QuantityRange Bends = new(0, 20, "");

    /// <summary>Length of a lead from a console to its radio: up to a powered extender pair over category cable.</summary>
    public static readonly QuantityRange LeadLength = new(0.05, 100, "m");

    /// <summary>Length of a cable that is already installed.</summary>
    public static readonly QuantityRange PulledLength = new(0.1, 1000, "m");

    /// <summary>Inputs or outputs of a device.</summary>
    public static readonly QuantityRange Sockets = new(1, 64, "");

    /// <summary>Most displays, devices, passages or cables in a house.</summary>
    public const int MostCabling = 100;

    /// <summary>Most cables in one passage.</summary>
    public const int MostHeld = 40;

    /// <summary>Most levels in a house.</summary>
    public const int MostLevels = 50;

    /// <summary>Most fixtures in a house.</summary>
    public const int MostFixtures = 5000;

    /// <summary>Most spots to compare.</summary>
    public const int MostSpots = 200;

    /// <summary>Most seats to compare.</summary>
    public const int MostSeats = 1000;

    /// <summary>Most zones, and most keep-outs, in a house.</summary>
    public const int MostZones = 500;

    /// <summary>Most heights of a zone.</summary>
    public const int MostHeights = 20;

    /// <summary>Distance between players side by side; the usual width of a place on a sofa. Metres.</summary>
    public const double BesideMetres = 0.6;

    /// <summary>Least shared floor area of two levels that count as one above the other; square metres.</summary>
    public const double LeastLevelOverlap = 0.01;

    /// <summary>Height above the floor of the hands of a seated player; metres.</summary>
    public const double Hands = 0.7;

    /// <summary>A seat's required margin if the file gives none, dB.</summary>
    public const double RequiredDb = Seat.UsualRequiredDb;

    /// <summary>Clear width of a door leaf, metres.</summary>
    public const double DoorWidth = 0.8;

    /// <summary>Height of a door leaf, metres.</summary>
    public const double DoorHeight = 2.0;

    /// <summary>Sill of a window above the floor, metres.</summary>
    public const double WindowSill = 0.9;

    /// <summary>Sill to head of a window, metres.</summary>
    public const double WindowHeight = 1.2;

    /// <summary>Spread of a radio that the file describes without one, dB; the same as the tables' typical radios.</summary>
    public const double RadioSpreadDb = 3;

    /// <summary>A console's radio if the file names none.</summary>
    public const string TypicalConsole = "console-typical";

    /// <summary>A controller's radio if the file names none.</summary>
    public const string TypicalController = "controller-typical";

    /// <summary>Heights that differ by less count as equal, which allows for rounding between two units. Metres.</summary>
    public const double SameHeight = 0.001;

    /// <summary>Greatest difference between a gap between levels and its floor build-up without a warning; metres.</summary>
    public const double FloorGapTolerance = 0.05;

    /// <summary>The end of a passage may lie this far outside a room, in its wall; metres.</summary>
    public const double PassageAside = 0.3;

    /// <summary>A thing closer to a wall's centre line than this is inside the wall, however thin the wall is; metres.</summary>
    public const double ThinnestWall = 0.02;
}
