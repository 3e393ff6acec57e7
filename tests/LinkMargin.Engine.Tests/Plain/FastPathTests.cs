using System.Runtime.Intrinsics;
using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Reflected;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Plain;

/// <summary>
/// What is worked out several at a time, or left out by a bound, against the plain way: that the fast paths change nothing but
/// the time. Both are the same method, so nothing here says that it is right; the independent judges are in Judges.
/// </summary>
public sealed class FastPathTests
{
    private const double SameDb = 1e-9;

    // Some 20 dB below what any radio hears; farther down the edges of a front cancel to their rounding.
    private const double RoundingDb = 120;

    [Fact, Law]
    public void A_link_loses_the_same_as_by_the_plain_way() =>
        Gen.Select(RoomedHouse.Any.Where(house => house.Spots.Count > 0 && house.Seats.Count > 0), Gen.Double[0, 360], Gen.Bool).ForAll(
            (house, facing, isFacing) =>
            {
                var model = new LinkModel(house);
                double? facingDegrees = isFacing ? facing : null;
                foreach (Spot spot in house.Spots)
                {
                    var from = (FullSpotModel)model.For(spot);
                    foreach (Seat seat in house.Seats.Where(seat => house.PositionOf(seat) != from.Console))
                    {
                        Point3 hands = house.PositionOf(seat);
                        Assert.Equal(
                            Math.Min(RoundingDb, PlainLink.PathLossDb(from, hands, facingDegrees)),
                            Math.Min(RoundingDb, from.PathLossDb(hands, facingDegrees, new TraceBuffer())),
                            SameDb);
                    }
                }
            },
            cases: 100,
            also: [3352297342054662963, 1331168636021290453, 7669764258025478067]);

    [Fact, Law]
    public void Walls_that_close_off_a_front_leave_no_less_than_arrives() =>
        Gen.Select(RoomedHouse.Any.Where(house => house.Spots.Count > 0 && house.Seats.Count > 0), AnyReach).ForAll(
            (house, reach) =>
            {
                var model = (FullSpotModel)new LinkModel(house).For(house.Spots[0]);
                Scene scene = model.Scene;
                var walls = new ClosingWalls(model.House);
                var buffer = new TraceBuffer();
                foreach (Point3 hands in house.Seats.Select(house.PositionOf))
                {
                    var ends = new LinkEnds(model.Console, hands, null, false);
                    foreach (UprightMirror mirror in scene.Uprights)
                    {
                        if (MirrorView.TryOf(mirror, model.Console, hands, out MirrorView view)
                            && Mirror.InUpright(mirror, view, ends, model.House, reach, buffer, out Reflection r))
                        {
                            double arrives = r.PowerRatio * PlainLink.Share(scene, model, r, hands, reach, buffer);
                            Assert.True(walls.Most(mirror, view, ends, 0, reach) >= arrives);
                        }
                    }
                }
            },
            cases: 600);

    [Fact, Law]
    public void Four_edges_at_once_send_the_same_bits_as_one_by_one() =>
        Gen.Select(Gen.Double[0, 5].Array[4], AnyReach).ForAll(
            (some, reach) =>
            {
                double[] edges = [.. some.Select(v => v / FrontReach.Usual.End * reach.End)];
                (Vector256<double> inStep, Vector256<double> scattered) = EdgeKernel.Beyond(Vector256.Create(edges), reach);
                Assert.Equal(edges.Select(v => PlainEdgeKernel.Beyond(v, reach).InStep), Enumerable.Range(0, 4).Select(i => inStep[i]));
                Assert.Equal(edges.Select(v => PlainEdgeKernel.Beyond(v, reach).Scattered), Enumerable.Range(0, 4).Select(i => scattered[i]));
            });

    [Fact, Law]
    public void Any_pieces_let_the_same_through_as_by_the_plain_sum() =>
        Gen.Select(AnyPiece.Array[0, 60], AnyReach).ForAll(
            (pieces, reach) =>
            {
                double[] amplitudes = [.. pieces.Select(piece => piece.Amplitude)];
                Piece[] front = [.. pieces.Select(piece => piece.Piece)];
                Assert.Equal(PlainFrontSum.PowerRatio(front, amplitudes, reach), FrontSum.PowerRatio(front, amplitudes, reach), 1e-12);

                Piece[] mirror = [.. front.Select(piece => piece with { Plane = 0 })];
                Assert.Equal(PlainFrontSum.Reflected(mirror, amplitudes, reach), FrontSum.Reflected(mirror, amplitudes, reach), 1e-12);
            },
            cases: 2000,
            also: [1528538604090771936, 5696435574093362154]);

    [Fact, Law]
    public void Eight_walls_at_once_stand_where_each_stands_alone() =>
        Gen.Select(RandomWalls.Of(2.4), Gen.Select(RandomPlace.OnPlan, RandomPlace.Height).Array[2].Array[20], AnyReach).ForAll(
            (walls, rays, reach) =>
            {
                var scene = Scene.Compile(SimpleHouse.OfWalls(walls));
                PlanPanel[] each = [.. walls.Select(w => new PlanPanel(w.Start.X, w.Start.Y, w.End.X - w.Start.X, w.End.Y - w.Start.Y, -0.5, 1.25))];
                var panels = new PlanPanels(each);
                Span<double> rows = stackalloc double[PanelLanes.Room];
                foreach ((Point2 Plan, double Height)[] ends in rays)
                {
                    Point3 from = ends[0].Plan.At(ends[0].Height), to = ends[1].Plan.At(ends[1].Height);
                    if (from.Plan.DistanceTo(to.Plan) < 1e-3)
                    {
                        continue;
                    }

                    var ray = new Ray(from, to, 0.12, reach: reach);
                    foreach (Fold fold in scene.Uprights.Select(mirror => Fold.At(mirror, from)).Append(Fold.None))
                    {
                        for (int i = 0; i < each.Length; i++)
                        {
                            var lanes = new PanelLanes(in ray, fold, panels, i / PlanPanels.Lanes, 0xFF, rows);
                            int lane = i % PlanPanels.Lanes;
                            if ((lanes.Single >> lane & 1) != 0)
                            {
                                continue;
                            }

                            var alone = new PanelFront(in ray, in fold, each[i]);
                            Assert.Equal(alone.IsMet, (lanes.Met >> lane & 1) != 0);
                            if (alone.IsMet)
                            {
                                double cosine = Math.Abs((ray.EastX * each[i].AlongY) - (ray.NorthY * each[i].AlongX)) * ray.CosSlope / Math.Sqrt(each[i].SquaredMetres);
                                Assert.Equal(
                                    [.. Reported(alone), Math.Round(alone.CosIncidence(Math.Min(1, cosine), each[i]), 9)],
                                    [.. Reported(lanes[lane]), Math.Round(lanes.CosIncidence(lane), 9)],
                                    (one, other) => Math.Abs(one - other) <= 1e-8);
                            }
                        }
                    }
                }

                // What lies far beyond reach plays no part.
                static double[] Reported(PanelFront front)
                {
                    double middle = (front.First + front.Last) / 2;
                    bool isMet = front.TryBetween(front.First, front.AtFirst, middle, front.At(middle), out double low, out double high);
                    return [front.First, front.Last, front.NearestAlong, .. new[] { front.AtFirst, front.AtLast, isMet ? low : 99, isMet ? high : 99 }.Select(v => Math.Clamp(v, -20, 20))];
                }
            },
            cases: 300);

    [Fact, Law]
    public void A_fixture_that_a_group_leaves_out_adds_nothing() =>
        Gen.Select(RandomFixture.On(1), Gen.Select(RandomPlace.OnPlan, RandomPlace.Height).Array[2].Array[20], RandomWalls.Of(2.4)).ForAll(
            (fixture, rays, walls) =>
            {
                House house = SimpleHouse.OfWalls(walls) with { Fixtures = [fixture] };
                var scene = Scene.Compile(house);
                FixtureBox box = scene.Boxes[0];
                var lanes = new BoxLanes([box]);
                var buffer = new TraceBuffer();
                foreach ((Point2 Plan, double Height)[] ends in rays)
                {
                    Point3 from = ends[0].Plan.At(ends[0].Height), to = ends[1].Plan.At(ends[1].Height);
                    if (from.Plan.DistanceTo(to.Plan) < 1e-3)
                    {
                        continue;
                    }

                    var ray = new Ray(from, to, 0.12);
                    foreach (Fold fold in scene.Uprights.Select(mirror => Fold.At(mirror, from)).Append(Fold.None))
                    {
                        (double least, double greatest) = fold.Heights(from.Z, to.Z);
                        bool isNear = (lanes.Near(0, from.Plan) | lanes.Near(0, to.Plan)) != 0;
                        Assert.True(isNear || (!box.Covers(from.Plan) && !box.Covers(to.Plan)));
                        if ((lanes.MayMeet(0, ray, least, greatest) & 1) == 0 && box.VerticalExtent.IsMetBetween(least, greatest))
                        {
                            buffer.PieceCount = 0;
                            if (box.IsShell)
                            {
                                ShellFront.Gather(box, ray, fold, least, greatest, buffer);
                            }
                            else
                            {
                                BoxFront.GatherSolid(box, ray, fold, least, greatest, isNear, buffer);
                            }

                            Assert.Equal(0, buffer.PieceCount);
                        }
                    }
                }
            },
            cases: 300);

    [Fact, Law]
    public void Four_sides_of_a_fixture_stand_where_each_stands_alone() =>
        Gen.Select(RandomFixture.On(1), Gen.Select(RandomPlace.OnPlan, RandomPlace.Height).Array[2].Array[20], RandomWalls.Of(2.4)).ForAll(
            (fixture, rays, walls) =>
            {
                House house = SimpleHouse.OfWalls(walls) with { Fixtures = [fixture] };
                var scene = Scene.Compile(house);
                FixtureBox box = scene.Boxes[0];
                foreach ((Point2 Plan, double Height)[] ends in rays)
                {
                    Point3 from = ends[0].Plan.At(ends[0].Height), to = ends[1].Plan.At(ends[1].Height);
                    if (from.Plan.DistanceTo(to.Plan) < 1e-3)
                    {
                        continue;
                    }

                    var ray = new Ray(from, to, 0.12);
                    Assert.Equal(Reported(BoxSilhouette.SideBySide(box, ray, Fold.None)), Reported(BoxSilhouette.Of(box, ray, Fold.None)), Same);
                    foreach (UprightMirror mirror in scene.Uprights)
                    {
                        var fold = Fold.At(mirror, from);
                        Assert.Equal(Reported(BoxSilhouette.SideBySide(box, ray, fold)), Reported(BoxSilhouette.Of(box, ray, fold)), Same);
                    }
                }

                static double[] Reported(BoxSilhouette s) =>
                    s.Left >= s.Right && s.Left > -EdgeKernel.Reach && s.Right < EdgeKernel.Reach
                        ? [Math.Max(s.Right, -9), Math.Min(s.Left, 9), s.Enter, s.Leave] // beyond reach plays no part
                        : [];

                static bool Same(double one, double other) => Math.Abs(one - other) <= 1e-9;
            },
            cases: 500);

    private static readonly Gen<FrontReach> AnyReach = Gen.Bool.Select(isFar => isFar ? FrontReach.Far : FrontReach.Usual);

    // Some reach beyond the front, some end where others start, some share a plane.
    private static readonly Gen<double> Edge = Gen.OneOf(
        Gen.Double[-6, 6], Gen.Double[-15, 15], Gen.Int[-4, 4].Select(i => (double)i), Gen.Const(double.NegativeInfinity), Gen.Const(double.PositiveInfinity));

    private static readonly Gen<(double Least, double Greatest)> Stretch = Gen.Select(
        Edge, Edge, (a, b) => a == b ? (-1.0, 1.0) : (Math.Min(a, b), Math.Max(a, b)));

    private static readonly Gen<(Piece Piece, double Amplitude)> AnyPiece =
        from across in Stretch
        from up in Gen.OneOf(Stretch, Gen.Const((double.NegativeInfinity, double.PositiveInfinity)))
        from plane in Gen.Int[-1, 5]
        from amplitude in Gen.OneOf(Gen.Double[0, 1], Gen.Const(1.0), Gen.Const(0.0))
        select (new Piece { Low = across.Least, High = across.Greatest, Bottom = up.Item1, Top = up.Item2, Plane = plane }, amplitude);
}
