using LinkMargin.Cli.Invoking;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Json;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Pictures;

namespace LinkMargin.Cli.Maps;

/// <summary>Searches for places, draws the map of the choice and writes it.</summary>
/// <param name="invocation">Where messages go.</param>
/// <param name="loaded">The house.</param>
/// <param name="model">The house, ready.</param>
/// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
internal sealed class ChoiceMaker(Invocation invocation, LoadedHouse loaded, LinkModel model, double confidence)
{
    // Fine enough for smooth lines, coarse enough to take no longer than the search.
    private const double MapCellMetres = 0.2;

    private readonly House house = loaded.House;

    /// <summary>Searches, writes the picture and returns what was found.</summary>
    /// <param name="request">Where to look.</param>
    /// <param name="picture">The picture's file, as typed.</param>
    /// <param name="folder">The folder to make for it; null if it exists.</param>
    /// <param name="force">Whether a file that this program did not write may be replaced.</param>
    public PlacesDocument Make(PlaceRequest request, string picture, string? folder, bool force)
    {
        var search = new PlaceSearch(model, request, new JudgeAtConfidence(loaded.Uncertainty, confidence));
        if (!search.HasSeats)
        {
            throw new CannotBeDoneException("every seat already plays a console at a named spot ('plays'), so there is nothing to place; remove 'plays' from the seats that would use this console");
        }

        if (search.Places.Count == 0)
        {
            throw new CannotBeDoneException(house.Zones.Count > 0 && !request.Everywhere
                ? "no zone has room for a console outside keep-outs, solid fixtures and floor voids; change 'zones' or 'keep-out', or add --everywhere"
                : "there is no free floor for a console; change 'keep-out', or choose another --height or a smaller --grid");
        }

        if (folder is not null)
        {
            invocation.Files.MakeFolder(folder);
        }

        invocation.Files.NeedWritable(picture, force);
        int[] levels = [.. Enumerable.Range(0, house.Levels.Count).Where(level => request.LevelIndex is null || request.LevelIndex == level)];
        var progress = new Progress(search.Places.Count + levels.Sum(level => (long)LevelGrid.Over(house.Levels[level], MapCellMetres).Count));
        PlacesDocument? made = null;
        ProgressBar.While(invocation, "places", progress, () => made = Make(search, request, levels, picture, force, progress));
        return made!;
    }

    private PlacesDocument Make(PlaceSearch search, PlaceRequest request, int[] levels, string picture, bool force, Progress progress)
    {
        PlaceResult result = search.Run(() => progress.Advance(), invocation.Cancellation);
        PlacedSpot best = result.Best[0];
        double heightMetres = best.Place.HeightMetres;
        var choice = new ChoiceAtConfidence(model, search, loaded.Uncertainty, confidence);
        Field[] fields =
        [
            .. levels.Select(level => choice.MapOf(
                level, heightMetres, MapCellMetres, best.Score.Spot, () => progress.Advance(), invocation.Cancellation)),
        ];
        HouseUncertainty? uncertainty = house.Spots.Count == 0 ? null : HouseUncertainty.Of(model, house.Spots, house.Seats, loaded.Uncertainty, confidence);
        Ranking named = Ranking.Of(model, uncertainty?.AtConfidence);
        ChoiceRequest shown = new ChoicePictures(loaded, model, confidence).RequestFor(result, named, fields, request.Everywhere);
        byte[] png = ChoicePicture.Render(shown, ChoicePicture.FittingSize(shown));
        invocation.Cancellation.ThrowIfCancellationRequested();
        invocation.Files.Write(picture, png, force);
        RunPlanner? planner = house.Cabling.Displays.Count == 0 ? null : new RunPlanner(house with { Spots = [.. result.Best.Select(placed => placed.Score.Spot)] });
        return new PlacesDocument(
            house.Name,
            [.. model.Occupied.Select(seat => seat.Name)],
            result.LookedAt,
            result.Computed,
            [.. result.Best.Select(placed => PlaceDocument.Of(house, placed) with { Cables = planner is null ? null : CablesDocument.Of(planner.Plan(placed.Score.Spot)) })],
            named.Scores.Count > 0 ? RankDocument.Of(house, named.Scores[0], 1, uncertainty) : null,
            picture)
        {
            Confidence = confidence,
            WhatIf = loaded.WhatIfOrNone,
            FittedToMeasurements = loaded.FittedToMeasurements,
        };
    }
}
