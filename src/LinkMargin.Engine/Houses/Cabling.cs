using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Houses;

/// <summary>What a house file says about pictures and their cables.</summary>
public sealed record Cabling
{
    /// <summary>For a file that says nothing about them.</summary>
    public static Cabling None { get; } = new();

    /// <summary>Screens and projectors.</summary>
    public IReadOnlyList<Display> Displays { get; init; } = [];

    /// <summary>What stands between console and display.</summary>
    public IReadOnlyList<Device> Devices { get; init; } = [];

    /// <summary>Where a cable may pass without boring.</summary>
    public IReadOnlyList<Passage> Passages { get; init; } = [];

    /// <summary>Cables that are pulled already.</summary>
    public IReadOnlyList<PulledCable> Cables { get; init; } = [];

    /// <summary>The kinds of cable that may be bought, the preferred one first.</summary>
    public IReadOnlyList<CableKind> Kinds { get; init; } = [];
}

/// <summary>Where an end of a cable is.</summary>
/// <param name="Name">What it is called: a fixture, a spot, a seat, a display or a device.</param>
/// <param name="LevelIndex">The level it is on; 0 is the lowest.</param>
/// <param name="Plan">Where on the plan.</param>
/// <param name="HeightMetres">Above the level's floor, metres.</param>
/// <param name="Fixture">The fixture it is, or is inside; null if neither.</param>
public sealed record CablePlace(string Name, int LevelIndex, Point2 Plan, double HeightMetres, string? Fixture)
{
    /// <summary>The middle of a fixture.</summary>
    public static CablePlace Of(Fixture fixture)
    {
        ArgumentNullException.ThrowIfNull(fixture);
        return new(fixture.Name, fixture.LevelIndex, fixture.Centre, (fixture.FromMetres + fixture.ToMetres) / 2, fixture.Name);
    }

    /// <summary>Where a console at a spot has its sockets.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="fixtures">The fixtures of the house: the console may stand in one.</param>
    public static CablePlace Of(Spot spot, IEnumerable<Fixture> fixtures)
    {
        ArgumentNullException.ThrowIfNull(spot);
        (Point2 plan, double heightMetres) = spot.Lead is { } lead ? (lead.ConsolePlan, lead.ConsoleHeightMetres) : (spot.Plan, spot.HeightMetres);
        Fixture? shell = fixtures.FirstOrDefault(fixture => fixture.IsShell && fixture.LevelIndex == spot.LevelIndex && fixture.Contains(plan, heightMetres));
        return new(spot.Name, spot.LevelIndex, plan, heightMetres, shell?.Name);
    }

    /// <summary>Where a player's hands are.</summary>
    public static CablePlace Of(Seat seat)
    {
        ArgumentNullException.ThrowIfNull(seat);
        return new(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres, null);
    }
}

/// <summary>What a picture goes through before a display's input.</summary>
public enum DisplayInput
{
    /// <summary>Straight from the console, for games.</summary>
    Direct,

    /// <summary>Through a processor.</summary>
    Processed,
}

/// <summary>A screen or projector.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where its inputs are.</param>
/// <param name="Inputs">The inputs that need the console's picture, at least one.</param>
/// <param name="Signal">The picture wanted.</param>
public sealed record Display(string Name, CablePlace Place, IReadOnlyList<DisplayInput> Inputs, PictureSignal Signal)
{
    /// <summary>The rate its inputs take, Gbit/s; null where not stated.</summary>
    public double? TakesGbps { get; init; }

    /// <summary>The processor of its processed input, by name; null where any will do.</summary>
    public string? Through { get; init; }
}

/// <summary>What a device does with a picture.</summary>
public enum DeviceRole
{
    /// <summary>Processes it on its way to a display.</summary>
    Processor,

    /// <summary>Copies one input to several outputs.</summary>
    Splitter,
}

/// <summary>Something between console and display.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Role">What it does.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Inputs">How many inputs it has, at least 1.</param>
/// <param name="Outputs">How many outputs it has, at least 1.</param>
public sealed record Device(string Name, DeviceRole Role, CablePlace Place, int Inputs, int Outputs)
{
    /// <summary>The rate it passes, Gbit/s; null where not stated.</summary>
    public double? PassesGbps { get; init; }
}

/// <summary>Where a cable may pass without boring: a hole, a chase, a conduit, a stair's side, a cavity.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LowerLevel">The level of its first end.</param>
/// <param name="UpperLevel">The level of its other end, the same or another.</param>
/// <param name="From">Its first end on the plan.</param>
/// <param name="To">Its other end on the plan.</param>
public sealed record Passage(string Name, int LowerLevel, int UpperLevel, Point2 From, Point2 To)
{
    /// <summary>Bore of a round one, metres; null for others.</summary>
    public double? BoreMetres { get; init; }

    /// <summary>Clear width and height of one that is not round, metres; null where it is round or nobody measured it.</summary>
    public PlugSize? Clear { get; init; }

    /// <summary>Corners of 90° in it.</summary>
    public int Bends { get; init; }

    /// <summary>The cables in it already, by kind.</summary>
    public IReadOnlyList<CableKind> Holds { get; init; } = [];
}

/// <summary>A cable that is pulled already.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">Its end at the source.</param>
/// <param name="To">Its other end.</param>
/// <param name="Kind">What it is.</param>
/// <param name="LengthMetres">Its length, metres; null where nobody knows.</param>
public sealed record PulledCable(string Name, CablePlace From, CablePlace To, CableKind Kind, double? LengthMetres);
