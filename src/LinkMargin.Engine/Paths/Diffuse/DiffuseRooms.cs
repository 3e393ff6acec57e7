using System.Collections.Concurrent;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>The rooms of a house with their power balance, which every diffuse field shares.</summary>
internal sealed class DiffuseRooms : IPathSource
{
    // So many seats are kept with their fields: more than a house has, and not all that a hand moves a seat through.
    private const int MostSeats = 64;

    private readonly ShiftedRooms shifted;
    private readonly ConcurrentDictionary<Point3, Lazy<ShiftedFields>> ofSeats = [];
    private readonly double[] fluxOfOwn; // by room, W/m² that strike its surfaces for each watt put in there; 0 = not yet known

    /// <summary>Prepares the rooms.</summary>
    /// <param name="house">The house.</param>
    /// <param name="akin">The rooms of a house of which this one is a variant: what looks the same there is not computed again; null for none.</param>
    internal DiffuseRooms(TracedHouse house, DiffuseRooms? akin = null)
    {
        House = house;
        Cells = new Cells(house.Scene);
        CellSurfaces surfaces = SurfaceSurvey.Of(house.Scene, Cells);
        if (akin is not null)
        {
            surfaces.Reuse(akin.Shell.Surfaces);
        }

        Shell = new RoomShell(surfaces, house.Losses);
        shifted = new ShiftedRooms(Shell, house.Losses.Count, Cells);
        fluxOfOwn = new double[Cells.RoomCount];
    }

    /// <summary>The house.</summary>
    internal TracedHouse House { get; }

    /// <summary>The rooms.</summary>
    internal Cells Cells { get; }

    /// <summary>Their surfaces and power balance.</summary>
    internal RoomShell Shell { get; }

    /// <inheritdoc/>
    public PathFinder From(Point3 start) => new DiffusePaths(this, start);

    /// <summary>
    /// Share of the diffuse field that a player leaves in the room of the hands. A body moves energy between directions without changing
    /// the mean over all of them. What it absorbs is lost to the room's balance, where it adds area A to the diagonal. The flux in the
    /// room falls from F to F/(1 + A·g), with g the flux there for each watt put in there: exact for one cell of the balance (Sherman
    /// and Morrison), whichever end of the link the power comes from.
    /// </summary>
    /// <param name="cell">The cell of the hands; in a hollow fixture or outdoors the player changes nothing.</param>
    internal double PlayerShare(int cell)
    {
        if (cell < 0 || cell >= fluxOfOwn.Length)
        {
            return 1;
        }

        double flux = Volatile.Read(ref fluxOfOwn[cell]);
        if (flux == 0)
        {
            // Several threads may come here at once: all compute the same.
            var power = new double[Cells.Count];
            power[cell] = 1;
            flux = Shell.Balance.Flux(power)[cell];
            Volatile.Write(ref fluxOfOwn[cell], flux);
        }

        return 1 / (1 + (House.Body.AbsorbingSquareMetres * flux));
    }

    /// <summary>The fields of one console with each material's loss shifted in turn.</summary>
    internal ShiftedFields ShiftedFrom(DiffuseField plain) => shifted.FieldsFrom(plain);

    /// <summary>
    /// The same of a console where a player's hands are: the diffuse field loses the same both ways, so these serve every link that ends there.
    /// </summary>
    internal ShiftedFields ShiftedFromSeat(Point3 hands)
    {
        if (ofSeats.Count >= MostSeats)
        {
            ofSeats.Clear();
        }

        return ofSeats.GetOrAdd(hands, place => new Lazy<ShiftedFields>(() => ShiftedFrom(new DiffuseField(Cells, Shell, place)))).Value;
    }
}

/// <summary>The diffuse field of one console, as one path.</summary>
internal sealed class DiffusePaths : PathFinder
{
    private readonly DiffuseRooms rooms;
    private readonly Lazy<ShiftedFields> shifted;

    internal DiffusePaths(DiffuseRooms rooms, Point3 start)
    {
        this.rooms = rooms;
        Field = new(rooms.Cells, rooms.Shell, start);
        shifted = new(() => rooms.ShiftedFrom(Field));
    }

    /// <summary>The rooms.</summary>
    internal DiffuseRooms Rooms => rooms;

    /// <summary>The field.</summary>
    internal DiffuseField Field { get; }

    internal override bool AlwaysCounts => true;

    internal override bool IsQuick => true;

    internal override void FindTo(in LinkEnds ends, double leastPower, TraceBuffer buffer, ref FoundPaths found)
    {
        // An antenna in a diffuse field receives λ²/4π of it, whatever its pattern; the polarisation mismatch is counted once for the link.
        double bare = Field.At(ends.End) * rooms.House.WavelengthMetres * rooms.House.WavelengthMetres / (4 * Math.PI), power = bare * PlayerShare(ends);
        buffer.AlwaysPower += bare;
        if (power > 0)
        {
            found.Add(new Found(this, power));
        }
    }

    private double PlayerShare(in LinkEnds ends) => rooms.PlayerShare(rooms.Cells.At(ends.IsPlayerAtStart ? ends.Start : ends.End));

    private PathBudget Itemise(in LinkEnds ends, double power)
    {
        double bodyDb = Decibels.LossFromPowerRatio(PlayerShare(ends)), lossDb = PathLoss.FromPowerRatio(power);
        double length = ends.DistanceMetres + rooms.Shell.Balance.LifeMetres(rooms.Cells.At(ends.End));
        return new PathBudget(new TracedPath(PathKind.Diffuse, [ends.Start, ends.End], length, []), 0, [], lossDb)
        {
            Bases = [],
            BodyDb = bodyDb,
            DiffuseDb = lossDb - bodyDb,
        };
    }

    private void AddGradients(in LinkEnds ends, LossGradients gradients)
    {
        // The same from either end.
        (Point3 player, Point3 console) = ends.IsPlayerAtStart ? (ends.Start, ends.End) : (ends.End, ends.Start);
        IEnumerable<(int Material, double Slope)> slopes = ends.IsPlayerShared
            ? rooms.ShiftedFromSeat(player).SlopesAt(console)
            : shifted.Value.SlopesAt(ends.End);
        foreach ((int material, double slope) in slopes)
        {
            gradients.Add(material, null, slope);
        }
    }

    private readonly record struct Found(DiffusePaths Finder, double Power) : IFoundPath
    {
        public PathBudget Itemise(in LinkEnds ends, TraceBuffer buffer) => Finder.Itemise(ends, Power);

        public void AddGradients(in LinkEnds ends, TraceBuffer buffer, LossGradients gradients) => Finder.AddGradients(ends, gradients);
    }
}
