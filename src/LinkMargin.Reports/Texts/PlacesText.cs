using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Files.Json;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>The best places for a console, how they compare with the spots of the house file, and how to keep one.</summary>
/// <param name="loaded">The house.</param>
internal sealed class PlacesText(LoadedHouse loaded)
{
    /// <summary>Writes the places.</summary>
    public void Write(PlacesDocument places, TextWriter output, int width)
    {
        WordWrap.Write(string.Create(CultureInfo.InvariantCulture,
            $"Best places for a console in {places.House}, by the margin to count on of the weakest seat ({UncertaintyWords.Reached(places.Confidence)}): {places.Candidates} places screened, the best {places.ComputedExactly} computed in full. On one level those listed are at least {loaded.Lengths.Brief(PlaceRequest.UsualApartMetres)} apart."),
            output, width);
        if (places.Occupied.Count > 0)
        {
            WordWrap.Write($"With people on {string.Join(", ", places.Occupied.Select(name => $"'{name}'"))}, who obstruct all links but their own.", output, width);
        }

        output.WriteLine();
        WriteTable(places, output, width);
        output.WriteLine();
        WordWrap.Write($"Margins in dB; {Headroom.Note}; all pass: probability that every seat passes.", output, width);
        WordWrap.Write(Against(places), output, width);
        if (places.Places.Any(place => place.Cables is not null))
        {
            output.WriteLine();
            WordWrap.Write("Video cables that each place needs", output, width);
            output.WriteLine();
            CableTable.Write(places.Places.Where(place => place.Cables is not null).Select(place => (place.Place, place.Cables!)), "", loaded.Lengths, output, width);
            output.WriteLine();
        }

        PlaceDocument best = places.Places[0];
        WordWrap.Write("To compare and map the first place like any spot, add it to 'spots' in the house file:", output, width);
        WordWrap.WriteHanging(string.Create(CultureInfo.InvariantCulture,
            $"- {{name: {best.Place}, level: {best.Level}, at: [{Written(best.XM)}, {Written(best.YM)}, {Written(best.HeightM)}]}}"), output, width, "  ", "    ");
        WordWrap.Write($"Map of the choice (margin to count on): {places.Picture}", output, width);
        foreach (string line in Cautions.About(places.Places.Select(place => ($"{place.Place} to '{place.WeakestSeat}'", place.Cautions))))
        {
            WordWrap.Write(line, output, width);
        }

        WordWrap.Write(Cautions.Estimates, output, width);
    }

    private void WriteTable(PlacesDocument places, TextWriter output, int width)
    {
        var table = new TextTable(
        [
            new Column(""),
            new Column("in") { Wraps = true },
            new Column("level"),
            new Column(loaded.Lengths.InFeet ? "x, y\nheight" : "x, y\nheight, m"),
            new Column("weakest seat") { Wraps = true },
            new Column("to count\non", Align.Right),
            new Column(Headroom.Heading, Align.Right),
            new Column("seats\npass", Align.Right),
            new Column("all\npass", Align.Right),
        ]);
        foreach (PlaceDocument place in places.Places)
        {
            table.Add(
                place.Place["place ".Length..],
                place.Where,
                place.Level,
                $"{Brief(place.XM)}, {Brief(place.YM)}\n{Brief(place.HeightM)} high",
                place.WeakestSeat,
                (place.HeadroomDb < 0 ? "! " : "") + Tenths.ShowMargin(place.MarginAtConfidenceDb, place.RequiredDb),
                Tenths.Signed(Difference(place)),
                FormattableString.Invariant($"{place.SeatsPassing} of {place.Seats}"),
                place.ProbabilityAllPass is { } likely ? UncertaintyWords.Likely(likely) : "-");
        }

        table.WriteTo(output, width);
    }

    private static string Against(PlacesDocument places)
    {
        PlaceDocument best = places.Places[0];
        string found = best.SeatsPassing == best.Seats ? "Every seat passes there." : "No place works for every seat.";
        if (places.BestSpot is not { } spot)
        {
            return found;
        }

        long lead = Difference(best) - ShownMargin.HeadroomTenths(spot.MarginAtConfidenceDb, spot.RequiredDb);
        string than = lead switch
        {
            > 0 => $"{Tenths.Show(lead)} dB better than",
            < 0 => $"{Tenths.Show(-lead)} dB worse than",
            _ => "as good as",
        };
        return $"{found} {char.ToUpperInvariant(best.Place[0])}{best.Place[1..]} is {than} the best spot in the file, '{spot.Spot}', at the weakest seat of each.";
    }

    private static long Difference(PlaceDocument place) => ShownMargin.HeadroomTenths(place.MarginAtConfidenceDb, place.RequiredDb);

    // Metres are named once, in the heading of the column; feet and inches carry their unit.
    private string Brief(double metres) => loaded.Lengths.InFeet ? loaded.Lengths.Brief(metres) : metres.ToString("0.00", CultureInfo.InvariantCulture);

    // With the unit, so that the line can be pasted into a file with any unit.
    private string Written(double metres) => loaded.Lengths.InFeet
        ? loaded.Lengths.Exact(metres)
        : metres.ToString("0.0##", CultureInfo.InvariantCulture) + " m";
}
