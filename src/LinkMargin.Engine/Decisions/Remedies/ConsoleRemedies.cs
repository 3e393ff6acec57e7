using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>The console, or its radio alone, somewhere else nearby.</summary>
internal static class ConsoleRemedies
{
    // Leads that can be bought, metres: common practice.
    private static readonly double[] LeadsMetres = [1, 2, 3, 5];

    private const double RaiseStepMetres = 0.2;

    // A shelf for a console is hardly deeper: common practice.
    private const double DeepestBoardMetres = 0.5;

    // Height of the radio above the lid that the console stands on.
    private const double AboveLidMetres = 0.05;

    /// <summary>The edit that puts the spot at a place.</summary>
    public static MoveSpot MoveTo(Spot spot, Standing place) => new(spot.Name, place.LevelIndex, place.Plan, place.HeightMetres);

    /// <summary>The best place in reach for each length of lead, in the room the spot is in.</summary>
    public static IEnumerable<Remedy> Leads(RemedyTrial trial, NearbyPlaces nearby)
    {
        House house = trial.House;
        Spot spot = trial.Spot;
        Level level = house.Levels[spot.LevelIndex];
        if (level.Rooms.FirstOrDefault(room => room.Outline.Contains(spot.Plan)) is not { } room)
        {
            yield break;
        }

        ReceiverRest[] rests = [.. ReceiverRests.In(house, spot.LevelIndex, room)];
        IReadOnlyList<double> lengths = new LeadRoutes(house, CablePlace.Of(spot, house.Fixtures), room).LengthsTo([.. rests.Select(PlaceOf)]);
        foreach (double metres in LeadsMetres)
        {
            ReceiverRest[] reached = [.. rests.Where((_, i) => lengths[i] <= metres)];
            if (nearby.BestOf([.. reached.Select(rest => rest.Place)]) is { } place)
            {
                yield return new Remedy(RemedyKind.Lead, Effort.Buy, [MoveTo(spot, place)])
                {
                    Thing = room.Name,
                    On = reached.First(rest => rest.Place == place).On,
                    LevelIndex = spot.LevelIndex,
                    LengthMetres = metres,
                };
            }
        }
    }

    /// <summary>
    /// The console at other heights: inside the fixture it is in, on top of that, or on a shelf on a wall within reach of where it
    /// stands.
    /// </summary>
    public static IEnumerable<Remedy> Raised(RemedyTrial trial)
    {
        House house = trial.House;
        Spot spot = trial.Spot;
        double ceiling = house.Levels[spot.LevelIndex].HeightMetres;
        Fixture? host = EnclosureRemedies.HostOf(house, spot);
        if (host is null && !house.Levels[spot.LevelIndex].Walls.Any(wall => WallFaces.DistanceTo(wall, spot.Plan) <= DeepestBoardMetres))
        {
            return [];
        }

        double lowest = host?.FromMetres ?? 0, highest = host?.ToMetres ?? ceiling;
        IEnumerable<double> heights = Enumerable.Range(1, 100)
            .Select(i => lowest + (i * RaiseStepMetres))
            .TakeWhile(height => height <= Math.Min(highest - (RaiseStepMetres / 2), ReceiverRests.HighestMetres));
        if (host is not null && host.ToMetres + AboveLidMetres < ceiling)
        {
            heights = heights.Append(host.ToMetres + AboveLidMetres);
        }

        return from height in heights
               where Math.Abs(height - spot.HeightMetres) > RaiseStepMetres / 2
                   && StandingRoom.IsFree(house, spot.LevelIndex, spot.Plan, height)
               select new Remedy(
                   RemedyKind.Raise,
                   Effort.Small,
                   [new MoveSpot(spot.Name, spot.LevelIndex, spot.Plan, Math.Round(height, 3))])
               {
                   Thing = height > highest ? host!.Name : "",
               };
    }

    /// <summary>The best place of each zone; on another level the video cable must get there too.</summary>
    public static IEnumerable<Remedy> Shelves(RemedyTrial trial, NearbyPlaces nearby)
    {
        foreach (Zone zone in trial.House.Zones)
        {
            IReadOnlyList<Standing> places = StandingRoom.Of(trial.House with { Zones = [zone] }, new PlaceRequest());
            if (nearby.BestOf(places) is { } place)
            {
                bool isElsewhere = zone.LevelIndex != trial.Spot.LevelIndex;
                yield return new Remedy(RemedyKind.Shelf, isElsewhere ? Effort.Cable : Effort.Small, [MoveTo(trial.Spot, place)])
                {
                    Thing = zone.Name,
                    LevelIndex = zone.LevelIndex,
                    CrossesStructure = isElsewhere,
                };
            }
        }
    }

    private static CablePlace PlaceOf(ReceiverRest rest) =>
        new("", rest.Place.LevelIndex, rest.Place.Plan, rest.Place.HeightMetres, rest.On.Length > 0 ? rest.On : null);
}
