using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Edits;

/// <summary>A seat moved. A seat that faces a fixture turns to it from the new place.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LevelIndex">The level it is then on; 0 is the lowest.</param>
/// <param name="Plan">Where the hands are on the plan.</param>
/// <param name="HandsMetres">Height of the hands above that level's floor, metres.</param>
public sealed record MoveSeat(string Name, int LevelIndex, Point2 Plan, double HandsMetres) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Seats = Changed(house.Seats, seat => seat.Name == Name, seat => Moved(house, seat), $"seat '{Name}'"),
    };

    private Seat Moved(House house, Seat seat)
    {
        Fixture? faced = seat.Faces is { } name ? house.Fixtures.FirstOrDefault(fixture => fixture.Name == name) : null;
        return seat with
        {
            LevelIndex = LevelIndex,
            Plan = Plan,
            HandsMetres = HandsMetres,
            FacingDegrees = faced is null ? seat.FacingDegrees : Facing.Degrees(Plan, faced.Centre),
        };
    }
}

/// <summary>A seat that no longer counts, such as one with a controller on a cable.</summary>
/// <param name="Name">Its name.</param>
public sealed record RemoveSeat(string Name) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house)
    {
        Seat[] left = [.. house.Seats.Where(seat => seat.Name != Name)];
        return left.Length == house.Seats.Count
            ? throw new ArgumentException($"The house has no seat '{Name}'.", nameof(house))
            : house with { Seats = left };
    }
}

/// <summary>A seat turned.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FacingDegrees">Where the player then looks, degrees anticlockwise from the x axis, 0 to below 360.</param>
public sealed record TurnSeat(string Name, double FacingDegrees) : HouseEdit
{
    /// <inheritdoc/>
    public override House ApplyTo(House house) => house with
    {
        Seats = Changed(
            house.Seats, seat => seat.Name == Name, seat => seat with { FacingDegrees = FacingDegrees, Faces = null }, $"seat '{Name}'"),
    };
}
