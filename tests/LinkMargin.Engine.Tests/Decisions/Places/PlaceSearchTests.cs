using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Decisions.Places;

public sealed class PlaceSearchTests
{
    [Fact, Law]
    public void The_best_place_is_the_best_of_the_grid() => RoomedHouse.Any.ForAll(
        house =>
        {
            // The straight line is the same both ways, so the survey is trusted here; a finer grid has more places than are few.
            var model = new LinkModel(house, ModelDepth.Direct);
            var search = new PlaceSearch(model, new PlaceRequest { CellMetres = 0.3 });
            AssertBest(model, search);
        },
        cases: 20);

    [Fact, Law]
    public void The_best_place_is_the_best_of_the_grid_with_the_full_model_too() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            AssertBest(model, new PlaceSearch(model, new PlaceRequest { CellMetres = 1.5, HeightsMetres = [1] }));
        },
        cases: 6);

    [Theory, Law]
    [InlineData(ModelDepth.Direct, 0.6, 5)]
    [InlineData(ModelDepth.Full, 0.9, 2)]
    public void By_the_margin_to_count_on_the_best_place_is_the_best_of_the_grid_too(ModelDepth depth, double cellMetres, int houses) => RoomedHouse.Any.ForAll(
        house =>
        {
            // More places than are few, so that the bound from the survey decides which are worked out.
            var judge = new JudgeAtConfidence(new UncertaintyBasis(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)) { Draws = 50 });
            var model = new LinkModel(house, depth);
            var search = new PlaceSearch(model, new PlaceRequest { CellMetres = cellMetres, HeightsMetres = [1] }, judge);
            if (!search.HasSeats || search.Places.Count == 0)
            {
                return;
            }

            double best = search.Places.Max(place =>
                judge.Score(model, new Spot("spot", place.LevelIndex, place.Plan, place.HeightMetres), [.. house.Seats.Where(seat => seat.Plays is null)]).WeakestHeadroomDb);
            Assert.Equal(best, search.Run().Best[0].Score.WeakestHeadroomDb, 1e-9);
        },
        cases: houses);

    /// <summary>
    /// The bound is the search's own: it computes forwards only what lies within it of the best. Links agree far better; what is left is
    /// from the slopes of the diffuse field, which are solved to 1e-4.
    /// </summary>
    [Fact, Law]
    public void Judged_backwards_a_place_is_as_good_as_computed_forwards() =>
        RoomedHouse.Any.Where(house => house.Seats.Count > 0 && house.Spots.Count > 0).ForAll(
            house =>
            {
                var judge = new JudgeAtConfidence(new UncertaintyBasis(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)) { Draws = 200 });
                var model = new LinkModel(house);
                Standing[] places = [.. house.Spots.Select(s => new Standing(s.LevelIndex, s.Plan, s.HeightMetres, ""))];
                var survey = new BackwardSurvey(model, house.Seats);
                double[] backwards = judge.WeakestHeadroomDb(model, survey.Store(places), house.Seats, [.. places.Select(survey.PointOf)]);
                double[] forwards = [.. house.Spots.Select(spot => judge.Score(model, spot, house.Seats).WeakestHeadroomDb)];
                Assert.Equal(forwards, backwards, (a, b) => Math.Abs(a - b) < PlaceSearch.JudgedSlackDb);
            },
            cases: 20);

    [Fact, Law]
    public void The_weakest_seat_is_the_weakest_of_all_whichever_are_computed_in_full() =>
        RoomedHouse.Any.Where(house => house.Seats.Count > 1 && house.Spots.Count > 0).ForAll(
            house =>
            {
                var model = new LinkModel(house);
                // Steps of a few centimetres, so that what counted at one place is tried at the next.
                Standing[] places =
                [
                    .. from spot in house.Spots
                       from step in Enumerable.Range(0, 5)
                       select new Standing(spot.LevelIndex, spot.Plan + new Point2(0.04 * step, 0), spot.HeightMetres, ""),
                ];
                double[] weakest = new BackwardSurvey(model, house.Seats).WeakestHeadroomDb(places, threads: 1);
                double[] least = [.. places.Select(place => house.Seats.Min(seat => HeadroomDb(seat, place)))];
                Assert.Equal(least, weakest);

                double HeadroomDb(Seat seat, Standing place) => model.Radios.GreatestLossDb
                    - model.BackFrom(seat).PathLossDb(place.Plan.At(house.Levels[place.LevelIndex].ElevationMetres + place.HeightMetres), seat.FacingDegrees, new TraceBuffer())
                    - seat.RequiredDb;
            },
            cases: 20);

    [Fact, Law]
    public void The_straight_line_reads_the_same_backwards() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house, ModelDepth.Direct);
            var survey = new BackwardSurvey(model, house.Seats);
            Standing[] places = [.. house.Spots.Select(s => new Standing(s.LevelIndex, s.Plan, s.HeightMetres, ""))];
            double[] backwards = survey.WeakestHeadroomDb(places);
            double[] forwards = [.. house.Spots.Select(spot => new SpotScore(spot, LinkEvaluation.Budgets(model, spot, house.Seats)).WeakestHeadroomDb)];
            Assert.Equal(forwards, backwards, (a, b) => Math.Abs(a - b) < 1e-9);
        },
        cases: 50);

    [Fact]
    public void A_survey_of_the_full_model_hears_the_player_from_where_he_sits()
    {
        // An empty room of 12 m: one seat in its middle that looks east. A console in front of the player is heard better
        // than one as far behind, forwards and backwards alike.
        House house = Hall(new Seat("seat", 0, new Point2(6, 6), 0.7, 0, 15));
        var model = new LinkModel(house);
        Standing[] places = [new(0, new Point2(9, 6), 0.7, ""), new(0, new Point2(3, 6), 0.7, "")];
        double[] backwards = new BackwardSurvey(model, house.Seats).WeakestHeadroomDb(places);
        double[] forwards = [.. places.Select(p => LinkEvaluation.Budget(model, new Spot("spot", 0, p.Plan, p.HeightMetres), house.Seats[0]).HeadroomDb)];
        Assert.True(forwards[0] > forwards[1] + 3);
        Assert.True(backwards[0] > backwards[1] + 3);
    }

    [Fact]
    public void Any_number_of_threads_gives_the_same_places()
    {
        House house = Hall(new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15));
        var model = new LinkModel(house, ModelDepth.Direct);
        PlaceResult alone = new PlaceSearch(model, new PlaceRequest { Threads = 1 }).Run(), together = new PlaceSearch(model, new PlaceRequest { Threads = 3 }).Run();
        Assert.Equal(Reported(alone), Reported(together));
    }

    [Fact]
    public void Places_reported_are_apart_and_best_first()
    {
        House house = Hall(new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15));
        PlaceResult result = new PlaceSearch(new LinkModel(house, ModelDepth.Direct), new PlaceRequest { ApartMetres = 2, Most = 4 }).Run();
        Assert.Equal(4, result.Best.Count);
        Assert.Equal(result.Best.Select(b => b.Score.WeakestHeadroomDb).OrderDescending(), result.Best.Select(b => b.Score.WeakestHeadroomDb));
        Assert.All(
            from a in result.Best from b in result.Best where a != b select a.Place.Plan.DistanceTo(b.Place.Plan),
            metres => Assert.True(metres >= 2));
        Assert.InRange(result.Best[0].Place.Plan.DistanceTo(new Point2(2, 2)), 0, 0.3);
        Assert.Equal(["place 1", "place 2", "place 3", "place 4"], result.Best.Select(b => b.Score.Spot.Name));
    }

    [Fact]
    public void A_seat_that_plays_a_console_of_its_own_asks_for_no_other()
    {
        House house = Hall(new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15), new Seat("other", 0, new Point2(10, 10), 0.7, null, 15) { Plays = "den rack" });
        PlacedSpot best = new PlaceSearch(new LinkModel(house, ModelDepth.Direct), new PlaceRequest()).Run().Best[0];
        Assert.Equal(["seat"], best.Score.Budgets.Select(b => b.Seat.Name));
        House own = house with { Seats = [house.Seats[1]] };
        Assert.Empty(new PlaceSearch(new LinkModel(own, ModelDepth.Direct), new PlaceRequest()).Run().Best);
    }

    [Fact]
    public void A_search_that_is_stopped_stops()
    {
        House house = Hall(new Seat("seat", 0, new Point2(2, 2), 0.7, null, 15));
        using var stop = new CancellationTokenSource();
        Assert.Throws<OperationCanceledException>(() => new PlaceSearch(new LinkModel(house, ModelDepth.Direct), new PlaceRequest())
            .Run(stop.Cancel, stop.Token));
    }

    private static IEnumerable<(Standing, double)> Reported(PlaceResult result) => result.Best.Select(b => (b.Place, b.Score.WeakestHeadroomDb));

    private static void AssertBest(LinkModel model, PlaceSearch search)
    {
        PlaceResult result = search.Run();
        double best = search.Places.Select((place, i) => new SpotScore(
            new Spot($"{i}", place.LevelIndex, place.Plan, place.HeightMetres),
            LinkEvaluation.Budgets(model, new Spot($"{i}", place.LevelIndex, place.Plan, place.HeightMetres), model.House.Seats)))
            .Select(score => score.WeakestHeadroomDb)
            .DefaultIfEmpty(double.NaN)
            .Max();
        Assert.Equal(search.Places.Count > 0, result.Best.Count > 0);
        if (result.Best.Count > 0)
        {
            Assert.Equal(best, result.Best[0].Score.WeakestHeadroomDb, 1e-9);
        }
    }

    private static House Hall(params Seat[] seats) => SimpleHouse.OfWalls() with
    {
        Levels = [new Level("hall", 0, 2.5) { Rooms = [new Room("hall", new Polygon([new(0, 0), new(12, 0), new(12, 12), new(0, 12)]))] }],
        Spots = [new Spot("den rack", 0, new Point2(6, 1), 1)],
        Seats = seats,
    };
}
