using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Maps;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Tests.Maps;

/// <summary>Where the labels of a sheet stand.</summary>
public sealed class SheetLabelTests
{
    private static readonly House House = SampleHouse.Make();

    [Theory]
    [InlineData(200)]
    [InlineData(260)]
    [InlineData(400)]
    public void No_label_covers_a_wall_a_mark_or_another_label(double mapPoints)
    {
        SheetRequest request = RequestOf(House);
        PlanView view = ViewOf(House, mapPoints);
        IReadOnlyList<SeatNumber> numbers = SeatNumbers.Of(request, _ => view);
        MapPanel panel = SeatNumbers.PanelOf(request, new MarginColours(request.Range, request.StepDb));
        foreach (SheetMap map in request.Maps)
        {
            IReadOnlyList<PlanMark> marks = SeatNumbers.MarksOf(request, map, numbers);
            LabelBox[] labels = [.. panel.LabelsOf(view, map.Field.LevelIndex, marks).Written];
            LabelBox[] walls = [.. BuiltBoxes.OfWalls(view, House.Levels[map.Field.LevelIndex])];
            Assert.Equal(map.Seats.Count, labels.Length);
            Assert.All(labels, label => Assert.DoesNotContain(walls, label.Overlaps));
            Assert.All(labels, label => Assert.Equal(1, labels.Count(label.Overlaps)));
            Assert.All(labels, label => Assert.DoesNotContain(marks, mark => LabelBox.Around(view.PixelX(mark.Place.X), view.PixelY(mark.Place.Y), 4, 4).Overlaps(label)));
        }
    }

    // On a small map fewer names find room than on a large one; a name as long as a sentence never does.
    [Fact]
    public void A_name_that_finds_no_room_is_a_number_on_every_map()
    {
        string[] small = NumbersAt(House, 200), large = NumbersAt(House, 700);
        Assert.NotEmpty(small);
        Assert.Empty(large);

        House wordy = House with { Seats = [House.Seats[0] with { Name = new string('w', 300) }, .. House.Seats.Skip(1)] };
        Assert.Contains(wordy.Seats[0].Name, NumbersAt(wordy, 700));
    }

    [Fact]
    public void Numbers_follow_the_order_of_the_house()
    {
        string[] small = NumbersAt(House, 160);
        Assert.Equal(House.Seats.Select(seat => seat.Name).Where(small.Contains), small);
    }

    /// <summary>On a sheet of a report a seat keeps the number it has in the report, whichever names find no room.</summary>
    [Fact]
    public void A_seat_keeps_the_number_it_has_in_a_document()
    {
        SheetRequest request = RequestOf(House) with { SeatsByNumber = [.. House.Seats.Reverse()] };
        foreach (double points in (double[])[160, 200, 260])
        {
            PlanView view = ViewOf(House, points);
            IReadOnlyList<SeatNumber> numbers = SeatNumbers.Of(request, _ => view);
            Assert.NotEmpty(numbers);
            Assert.All(numbers, one => Assert.Equal(House.Seats[^one.Number].Name, one.Seat.Name));
            Assert.Equal(numbers.Select(one => one.Number).Order(), numbers.Select(one => one.Number));
            string[] marked = [.. request.Maps.SelectMany(map => SeatNumbers.MarksOf(request, map, numbers)).Where(mark => mark.IsNumbered).Select(mark => mark.Name).Distinct()];
            Assert.Equal(numbers.Select(one => FormattableString.Invariant($"{one.Number}")).Order(), marked.Order());
        }
    }

    // A key of whatever names ends on the sheet.
    [Fact]
    public void No_entry_of_a_key_runs_off_the_sheet()
    {
        const double Width = 400;
        KeyEntry[] entries = [new(20, new string('m', 500), (_, _) => { }), new(0, "short", (_, _) => { }), new(300, new string('i', 900), (_, _) => { })];
        Assert.InRange(new KeyStrip(entries, Width, 1).WidestPixels, 300, Width);
        Assert.InRange(new KeyStrip([entries[1]], Width, 1).WidestPixels, 10, 50);
    }

    /// <summary>A map that stands alone: as on a sheet, at any size.</summary>
    [Theory]
    [InlineData(120)]
    [InlineData(200)]
    [InlineData(570)]
    public void On_a_single_map_too_a_name_that_finds_no_room_is_a_number(double mapPoints)
    {
        MapRequest request = MapPictureTests.Request(0);
        PlanView view = ViewOf(request.House, mapPoints);
        IReadOnlyList<SeatNumber> numbers = MapPicture.NumbersOf(request, view);
        PlanMark[] marks = MapPicture.MarksOf(request, numbers);
        MarkLabels labels = MapPicture.PanelOf(request).LabelsOf(view, 0, marks);
        Assert.DoesNotContain(labels.Crowded, name => request.Seats.Any(mark => mark.Seat.Name == name));
        Assert.Equal(numbers.Count, marks.Count(mark => mark.IsNumbered));
        Assert.Equal(mapPoints < 500, numbers.Count > 0);
    }

    private static string[] NumbersAt(House house, double mapPoints)
    {
        PlanView view = ViewOf(house, mapPoints);
        return [.. SeatNumbers.Of(RequestOf(house), _ => view).Select(one => one.Seat.Name)];
    }

    private static PlanView ViewOf(House house, double points) =>
        PlanPlot.ViewIn(new(0, 0, points * 2, points * 2), PlanBounds.Of(house), 2);

    private static SheetRequest RequestOf(House house) => new(
        house,
        [
            .. from spot in house.Spots
               from level in Enumerable.Range(0, house.Levels.Count)
               select new SheetMap(SampleField.Make(house, spot, level, 0.5), SampleField.SeatsOn(house, spot, level)),
        ],
        15,
        new ColourRange(-15, 50),
        "Title",
        "Caption");
}
