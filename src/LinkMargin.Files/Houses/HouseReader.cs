using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses.Cables;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Houses.Levels;
using LinkMargin.Files.Houses.Placement;
using LinkMargin.Files.Plans;
using LinkMargin.Files.Plans.Drafts;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Builds a house from the parsed file. One reader reads one file.</summary>
internal sealed class HouseReader(Source source, MaterialTables tables)
{
    /// <summary>
    /// Reads everything and records every error. The house is complete only if no error was recorded: anything unreadable is left
    /// out or has a default value.
    /// </summary>
    public House? Read(MappingNode root)
    {
        MappingReader file = new(source, root, "a house file", HouseKeys.House);
        file.CheckForm(HouseFile.Form);
        source.BareUnit = file.OptionalWord("units", LengthUnits.FileWords, "a unit for lengths") ?? LengthUnit.Metre;
        string? name = file.RequiredName("house");

        MaterialReader materials = new(tables);
        List<LevelDraft> drafts = new LevelReader(source, materials).ReadAll(file);
        IReadOnlyList<double> elevations = LevelStack.Elevations(drafts, source);
        List<Level> levels = Build(drafts, elevations);

        LevelOverlaps.Report(drafts, levels, source);

        PlacementContext placement = new(source, drafts, levels);
        FixtureReader fixtures = new(placement, materials);
        fixtures.ReadAll(file);
        RadioReader radios = new(source, tables.Radios);
        SpotReader spotReader = new(placement, radios.OfSpot);
        List<Spot> spots = spotReader.ReadAll(file);
        double required = file.OptionalNumber("required", Quantity.Decibels, HouseLimits.Required) ?? HouseLimits.RequiredDb;
        List<Seat> seats = new SeatReader(placement, spotReader.AllNames, required).ReadAll(file);
        ZoneReader zoneReader = new(placement);
        List<Zone> zones = zoneReader.ReadZones(file);
        List<KeepOut> keepOuts = zoneReader.ReadKeepOuts(file);
        Cabling cabling = new CablingReader(placement, spots, seats, tables).Read(file);
        (Radio? console, Radio? controller) = radios.Read(file);

        return name is null || levels.Count == 0 || console is null || controller is null
            ? null
            : new House(name, levels, placement.Fixtures, spots, seats, console, controller)
            {
                Zones = zones,
                KeepOuts = keepOuts,
                Cabling = cabling,
                Surroundings = Surroundings.Of(SubstanceOf(Surroundings.GroundRow), SubstanceOf(Surroundings.TopCeilingRow)),
            };
    }

    // The user's own table may lack the row; the built-in one has it.
    private Dielectric? SubstanceOf(string row) => tables.Materials.TryGetValue(row, out Material? material)
        ? material.Dielectric
        : MaterialTablesFile.ReadBuiltIn().Tables?.Materials.GetValueOrDefault(row)?.Dielectric;

    // Levels know nothing of each other, so they are laid out side by side; their problems are reported one level after the other.
    private List<Level> Build(List<LevelDraft> drafts, IReadOnlyList<double> elevations)
    {
        var levels = new Level[drafts.Count];
        ProblemList[] problems = [.. drafts.Select(_ => new ProblemList())];
        Parallel.For(0, levels.Length, i => levels[i] = Build(drafts[i], elevations[i], problems[i]));
        foreach (Problem problem in problems.SelectMany(list => list))
        {
            source.Problems.Add(problem);
        }

        return [.. levels];
    }

    private Level Build(LevelDraft draft, double elevation, ProblemList problems)
    {
        Plan plan = PlanBuilder.Build(draft.Plan, new PlanProblems(source.File, problems, source.Lengths));
        return new Level(draft.Name, elevation, draft.Plan.HeightMetres)
        {
            Rooms = plan.Rooms,
            Walls = plan.Walls,
            Above = draft.Above,
        };
    }
}
