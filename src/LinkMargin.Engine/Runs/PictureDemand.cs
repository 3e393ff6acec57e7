using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// Which connections the console of a spot needs: to the displays that its seats face and their processors. A console has one picture
/// output; where it must feed more than one input, a splitter copies it.
/// </summary>
/// <param name="Connections">What must be connected.</param>
/// <param name="Splitter">The splitter in use; null for none.</param>
internal sealed record PictureDemand(IReadOnlyList<Connection> Connections, SplitterUse? Splitter)
{
    /// <summary>The displays that a seat of a spot faces, and those that are not fixtures.</summary>
    internal static IReadOnlyList<Display> DisplaysOf(House house, Spot spot) =>
    [
        .. house.Cabling.Displays.Where(display => display.Place.Fixture is not { } fixture
            || house.Seats.Any(seat => seat.IsPlayedAt(spot) && seat.Faces == fixture)),
    ];

    /// <summary>The displays of these whose processed input has no processor.</summary>
    internal static IReadOnlyList<string> WithoutProcessor(House house, IEnumerable<Display> displays) =>
        [.. displays.Where(display => display.Inputs.Contains(DisplayInput.Processed) && ProcessorOf(house, display) is null).Select(display => display.Name)];

    /// <summary>Every possible arrangement: one where no splitter is needed, otherwise one for each place where it may stand.</summary>
    internal static IEnumerable<PictureDemand> Of(House house, CablePlace console, IReadOnlyList<Display> displays)
    {
        List<Connection> onwards = [];
        List<Sink> sinks = [];
        foreach (Display display in displays)
        {
            RateLimit takes = new(display.Name, display.TakesGbps);
            foreach (DisplayInput input in display.Inputs)
            {
                if (input == DisplayInput.Processed && ProcessorOf(house, display) is { } processor)
                {
                    RateLimit passes = new(processor.Name, processor.PassesGbps);
                    onwards.Add(new Connection(processor.Place, display.Place, display.Signal, [passes, takes]));
                    Feed(processor.Place, display.Signal, passes);
                }
                else
                {
                    Feed(display.Place, display.Signal, takes);
                }
            }
        }

        if (sinks.Count <= 1)
        {
            yield return new PictureDemand([.. sinks.Select(sink => sink.From(console, [])), .. onwards], null);
            yield break;
        }

        PictureSignal most = sinks.Select(sink => sink.Signal).MaxBy(signal => signal.LineGbps)!;
        foreach ((SplitterUse splitter, RateLimit[] passes) in Splitters(house, console, sinks))
        {
            string name = splitter.Name ?? SplitterUse.Unnamed;
            yield return new PictureDemand(
            [
                new Connection(console, splitter.At, most, passes) { ToName = name },
                .. sinks.Select(sink => sink.From(splitter.At, passes) with { FromName = name }),
                .. onwards,
            ], splitter);
        }

        // One cable for each input; a processor of several displays gets the most demanding picture.
        void Feed(CablePlace place, PictureSignal signal, RateLimit limit)
        {
            int known = sinks.FindIndex(sink => sink.Place == place);
            if (known < 0)
            {
                sinks.Add(new Sink(place, signal, limit));
            }
            else if (sinks[known].Signal.LineGbps < signal.LineGbps)
            {
                sinks[known] = sinks[known] with { Signal = signal };
            }
        }
    }

    private static Device? ProcessorOf(House house, Display display) => house.Cabling.Devices.FirstOrDefault(
        device => device.Role == DeviceRole.Processor && (display.Through is null || device.Name == display.Through));

    // Where the house file has it, beside the console, or beside something that it feeds.
    private static IEnumerable<(SplitterUse Splitter, RateLimit[] Passes)> Splitters(House house, CablePlace console, List<Sink> sinks)
    {
        Device? described = house.Cabling.Devices.FirstOrDefault(device => device.Role == DeviceRole.Splitter && device.Outputs >= sinks.Count);
        RateLimit[] passes = described is null ? [] : [new RateLimit(described.Name, described.PassesGbps)];
        IEnumerable<CablePlace> places = [console, .. sinks.Select(sink => sink.Place)];
        foreach (CablePlace place in described is null ? places : places.Prepend(described.Place).Distinct())
        {
            yield return (new SplitterUse(described?.Name, sinks.Count, place, described is not null && place != described.Place), passes);
        }
    }

    private sealed record Sink(CablePlace Place, PictureSignal Signal, RateLimit Limit)
    {
        internal Connection From(CablePlace source, RateLimit[] passes) => new(source, Place, Signal, [.. passes, Limit]);
    }
}
