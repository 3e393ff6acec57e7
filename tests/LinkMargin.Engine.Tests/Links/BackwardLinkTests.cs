using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>A link read from the player's end, body and all, is the link read from the console's.</summary>
public sealed class BackwardLinkTests
{
    // Beyond this, some 20 dB below what any radio hears, the edges of a front cancel down to their rounding.
    private const double RoundingDb = 120;
    private const double RoundedDb = 1e-6;
    private const double SameDb = 1e-9;

    [Fact, Law]
    public void A_link_of_the_full_model_loses_as_much_read_backwards() => AreAlike(ModelDepth.Full, RoundedDb);

    [Fact, Law]
    public void A_straight_line_loses_exactly_as_much() => AreAlike(ModelDepth.Direct, SameDb);

    private static void AreAlike(ModelDepth depth, double sameDb) =>
        Gen.Select(RoomedHouse.Any.Where(house => house.Spots.Count > 0 && house.Seats.Count > 0), Gen.Double[0, 360]).ForAll(
            (house, facing) =>
            {
                Seat seat = house.Seats[0] with { FacingDegrees = facing };
                Spot spot = house.Spots[0];
                var model = new LinkModel(house with { Seats = [seat] }, depth, [seat]);
                var buffer = new TraceBuffer();
                double there = model.SeenFrom(seat).For(spot).PathLossDb(house.PositionOf(seat), facing, buffer);
                double back = model.BackFrom(seat).PathLossDb(house.PositionOf(spot), facing, buffer);
                Assert.Equal(Math.Min(there, RoundingDb), Math.Min(back, RoundingDb), sameDb);
            },
            cases: 60,
            also: [4840095150521462387, 8592736749464002183, 6527524394504427431, 5883938114222540620, 6749780216472454993, 1929]);
}
