using LinkMargin.Engine.Houses;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>
/// What a house file may say, and what it means where it says nothing. The ranges are generous bounds of a dwelling, set
/// to catch slips of unit and sign. The defaults are common practice in building, except where a remark says otherwise.
/// </summary>
internal static class HouseLimits
{
    /// <summary>East and north on a plan.</summary>
    public static readonly QuantityRange Coordinate = new(-1000, 1000, "m");

    /// <summary>A side of a room.</summary>
    public static readonly QuantityRange RoomSide = new(0.1, 500, "m");

    /// <summary>Floor to ceiling of a level.</summary>
    public static readonly QuantityRange LevelHeight = new(0.3, 30, "m");

    /// <summary>A finished floor over whatever the file measures from.</summary>
    public static readonly QuantityRange Elevation = new(-100, 300, "m");

    /// <summary>A height over a level's floor.</summary>
    public static readonly QuantityRange HeightOverFloor = new(0, 30, "m");

    /// <summary>Bottom edge to top edge of a wall, door or window.</summary>
    public static readonly QuantityRange PanelHeight = new(0.01, 30, "m");

    /// <summary>Clear width of an opening.</summary>
    public static readonly QuantityRange OpeningWidth = new(0.05, 50, "m");

    /// <summary>From the end of a stretch of wall to an opening.</summary>
    public static readonly QuantityRange OpeningAt = new(0, 500, "m");

    /// <summary>Distance between the centres of joists.</summary>
    public static readonly QuantityRange JoistSpacing = new(0.05, 5, "m");

    /// <summary>An angle, once round either way.</summary>
    public static readonly QuantityRange Angle = new(-360, 360, "deg");

    /// <summary>Smallest and largest side of a fixture.</summary>
    public static readonly QuantityRange FixtureSide = new(0.001, 100, "m");

    /// <summary>A margin somebody may require.</summary>
    public static readonly QuantityRange Required = new(0, 60, "dB");

    /// <summary>Days of a month on which a seat is used.</summary>
    public static readonly QuantityRange UsedDays = new(0.1, 31, "");

    /// <summary>Players on one seat.</summary>
    public static readonly QuantityRange Players = new(1, 16, "");

    /// <summary>Power into an antenna: from a beacon's least to a class far above anything in a house.</summary>
    public static readonly QuantityRange Transmit = new(-40, 36, "dBm");

    /// <summary>Mean gain of an antenna.</summary>
    public static readonly QuantityRange Gain = new(-30, 30, "dBi");

    /// <summary>Weakest level received.</summary>
    public static readonly QuantityRange Sensitivity = new(-140, -20, "dBm");

    /// <summary>Allowance for the grip.</summary>
    public static readonly QuantityRange Hand = new(0, 40, "dB");

    /// <summary>One standard deviation between radios.</summary>
    public static readonly QuantityRange Spread = new(0, 20, "dB");

    /// <summary>Bore, or a clear side, of a passage for cables.</summary>
    public static readonly QuantityRange PassageSide = new(0.003, 5, "m");

    /// <summary>Corners of 90° in a passage.</summary>
    public static readonly QuantityRange Bends = new(0, 20, "");

    /// <summary>Length of a lead from a console to its radio: up to a powered pair of boxes over category cable.</summary>
    public static readonly QuantityRange LeadLength = new(0.05, 100, "m");

    /// <summary>Length of a cable that is pulled already.</summary>
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

    /// <summary>From one player to the next who sit side by side; common practice for the places of a sofa. Metres.</summary>
    public const double BesideMetres = 0.6;

    /// <summary>Ground that two levels must share to count as over each other; square metres.</summary>
    public const double LeastLevelOverlap = 0.01;

    /// <summary>Height of hands holding a controller over the floor, of somebody sitting; metres.</summary>
    public const double Hands = 0.7;

    /// <summary>The margin a seat must have where the file gives none, dB.</summary>
    public const double RequiredDb = Seat.UsualRequiredDb;

    /// <summary>Clear width of a door leaf, metres.</summary>
    public const double DoorWidth = 0.8;

    /// <summary>Height of a door leaf, metres.</summary>
    public const double DoorHeight = 2.0;

    /// <summary>Sill of a window over the floor, metres.</summary>
    public const double WindowSill = 0.9;

    /// <summary>Sill to head of a window, metres.</summary>
    public const double WindowHeight = 1.2;

    /// <summary>Spread of a radio that is written out without one, dB; the same as the tables' typical radios.</summary>
    public const double RadioSpreadDb = 3;

    /// <summary>The radio a console has where the file names none.</summary>
    public const string TypicalConsole = "console-typical";

    /// <summary>The radio a controller has where the file names none.</summary>
    public const string TypicalController = "controller-typical";

    /// <summary>Heights that differ by less are the same height: two units' rounding of a tape measure. Metres.</summary>
    public const double SameHeight = 0.001;

    /// <summary>A gap between levels may differ from its floor build-up by this much before a warning; metres.</summary>
    public const double FloorGapTolerance = 0.05;

    /// <summary>The end of a passage may lie so far outside a room, in its wall; metres.</summary>
    public const double PassageAside = 0.3;

    /// <summary>Nearer to a wall's centre line than this, a thing stands in the wall however thin it is; metres.</summary>
    public const double ThinnestWall = 0.02;
}
