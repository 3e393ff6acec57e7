using System.Text.Json;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Json;

namespace LinkMargin.Files.Tests.Json;

public sealed class JsonTextTests
{
    private static readonly House House = MadeHouse();

    [Fact]
    public void A_zero_is_written_without_a_sign()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), House.Spots[0], House.Seats[0]) with { PathLossDb = -0.0, MarginDb = -0.0 };
        using JsonDocument document = JsonDocument.Parse(JsonText.Of(BudgetDocument.Of(House, budget)));
        Assert.Equal("0", document.RootElement.GetProperty("pathLossDb").GetRawText());
        Assert.Equal("0", document.RootElement.GetProperty("tableMedianDb").GetRawText());
    }

    [Fact]
    public void A_budget_has_the_keys_and_figures_that_scripts_rely_on()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), House.Spots[0], House.Seats[0]);
        using JsonDocument document = JsonDocument.Parse(JsonText.Of(BudgetDocument.Of(House, budget)));
        JsonElement root = document.RootElement;

        Assert.Equal("Té & <House>", root.GetProperty("house").GetString());
        Assert.Equal("rack", root.GetProperty("spot").GetString());
        Assert.Equal("sofa", root.GetProperty("seat").GetString());
        Assert.Equal(budget.DistanceMetres, root.GetProperty("distanceM").GetDouble());
        Assert.Equal(budget.Frequency.Megahertz, root.GetProperty("frequencyMHz").GetDouble());
        Assert.Equal(budget.PathLossDb, root.GetProperty("pathLossDb").GetDouble());
        Assert.Equal(budget.MarginDb, root.GetProperty("tableMedianDb").GetDouble());
        Assert.Equal(15, root.GetProperty("requiredDb").GetDouble());
        Assert.Equal(budget.Passes, root.GetProperty("passes").GetBoolean());
        JsonElement path = Assert.Single(root.GetProperty("paths").EnumerateArray());
        Assert.Equal("direct", path.GetProperty("kind").GetString());
        Assert.Equal(budget.DistanceMetres, path.GetProperty("lengthM").GetDouble());
        Assert.Equal(budget.PathLossDb, path.GetProperty("lossDb").GetDouble());
        JsonElement crossing = Assert.Single(path.GetProperty("crossings").EnumerateArray());
        Assert.Equal("wall", crossing.GetProperty("kind").GetString());
        Assert.Equal("stud", crossing.GetProperty("material").GetString());
        Assert.Equal("den", crossing.GetProperty("level").GetString());
        Assert.Equal(0, crossing.GetProperty("incidenceDeg").GetDouble(), 1e-6);
        Assert.Equal(3.4, crossing.GetProperty("lossDb").GetDouble());
        Assert.Equal("listed", crossing.GetProperty("basis").GetString());
        Assert.Empty(path.GetProperty("turns").EnumerateArray());
        Assert.Empty(root.GetProperty("occupied").EnumerateArray());
        JsonElement[] directions = [.. root.GetProperty("directions").EnumerateArray()];
        Assert.Equal(["controller", "console"], directions.Select(d => d.GetProperty("from").GetString()));
        Assert.Equal(["console", "controller"], directions.Select(d => d.GetProperty("to").GetString()));
        Assert.Equal([4, 6], directions.Select(d => d.GetProperty("transmitDbm").GetDouble()));
        Assert.Equal([-2, -2], directions.Select(d => d.GetProperty("antennaGainsDb").GetDouble()));
        Assert.Equal([6, 6], directions.Select(d => d.GetProperty("handAndBodyDb").GetDouble()));
        Assert.All(directions, d => Assert.Equal(3.0103, d.GetProperty("polarisationMismatchDb").GetDouble(), 1e-4));
        Assert.Equal([-90, -88], directions.Select(d => d.GetProperty("sensitivityDbm").GetDouble()));
        Assert.Equal(budget.Directions.Select(d => d.ReceivedDbm), directions.Select(d => d.GetProperty("receivedDbm").GetDouble()));
        Assert.Equal(budget.Directions.Select(d => d.MarginDb), directions.Select(d => d.GetProperty("tableMedianDb").GetDouble()));
    }

    [Fact]
    public void A_comparison_has_the_ranking_the_choice_and_every_link()
    {
        Ranking ranking = Ranking.Of(new LinkModel(House, ModelDepth.Direct));
        using JsonDocument document = JsonDocument.Parse(JsonText.Of(ComparisonDocument.Of(House, ranking, [])));
        JsonElement root = document.RootElement;

        JsonElement[] ranks = [.. root.GetProperty("ranking").EnumerateArray()];
        Assert.Equal([1, 2], ranks.Select(r => r.GetProperty("rank").GetInt32()));
        Assert.Equal(ranking.Scores.Select(s => s.Spot.Name), ranks.Select(r => r.GetProperty("spot").GetString()));
        Assert.Equal(ranking.Scores.Select(s => s.Weakest.HeadroomDb), ranks.Select(r => r.GetProperty("headroomDb").GetDouble()));
        Assert.Equal(ranking.Scores[0].Spot.Name, root.GetProperty("choice").GetProperty("spot").GetString());
        JsonElement rival = Assert.Single(root.GetProperty("choice").GetProperty("aheadOf").EnumerateArray());
        Assert.True(rival.GetProperty("isNext").GetBoolean());
        Assert.False(rival.GetProperty("isBestOfItsLevel").GetBoolean());
        Assert.Equal(
            ranking.Scores[0].Weakest.HeadroomDb - ranking.Scores[1].Weakest.HeadroomDb, rival.GetProperty("leadDb").GetDouble());
        Assert.Equal(House.Spots.Count * House.Seats.Count, root.GetProperty("links").GetArrayLength());
        Assert.Equal(ranking.SeatsNeverPassing.Select(s => s.Name), root.GetProperty("seatsNeverPassing").EnumerateArray().Select(s => s.GetString()!));
    }

    [Fact]
    public void Every_kind_of_obstacle_and_path_has_a_word()
    {
        Assert.All(Enum.GetValues<ObstacleKind>(), kind => Assert.NotEmpty(CrossingDocument.WordFor(kind)));
        Assert.All(Enum.GetValues<PathKind>(), kind => Assert.NotEmpty(PathDocument.WordFor(kind)));
        Assert.All(Enum.GetValues<TurnKind>(), kind => Assert.NotEmpty(TurnDocument.WordFor(kind)));
        Assert.All(Enum.GetValues<LossBasis>(), basis => Assert.NotEmpty(CrossingDocument.WordFor(basis)));
    }

    [Fact]
    public void No_zero_has_a_sign()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), House.Spots[0], House.Seats[0]);
        PathBudget path = budget.Paths[0] with { EdgesDb = -0.0, ReflectionDb = -0.0, SurfacesDb = -0.0, DiffractionDb = -0.0, BodyDb = -0.0, DiffuseDb = -0.0 };

        Assert.DoesNotContain(": -0,", JsonText.Of(BudgetDocument.Of(House, budget with { Paths = [path] })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_that_is_not_finite_is_refused()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), House.Spots[0], House.Seats[0]);

        Assert.ThrowsAny<ArgumentException>(() => JsonText.Of(BudgetDocument.Of(House, budget with { MarginDb = double.NaN })));
    }

    [Fact]
    public void Something_that_is_no_document_is_refused() => Assert.Throws<ArgumentException>(() => JsonText.Of(House));

    private static House MadeHouse()
    {
        var stud = new Material("stud", 3.4, 1, "made for tests");
        var level = new Level("den", 0, 2.4) { Walls = [new Wall("w", new Point2(2, -1), new Point2(2, 1), 0, 2.4, stud)] };
        return new House(
            "Té & <House>",
            [level],
            [],
            [new Spot("rack", 0, new Point2(0, 0), 1), new Spot("shelf", 0, new Point2(1, 0), 1)],
            [new Seat("sofa", 0, new Point2(5, 0), 1, null, 15), new Seat("far", 0, new Point2(90, 0), 1, null, 60)],
            new Radio("console", PowerLevel.FromDbm(6), 0, PowerLevel.FromDbm(-90), 0, 0, "made for tests"),
            new Radio("controller", PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-88), 6, 0, "made for tests"));
    }
}
