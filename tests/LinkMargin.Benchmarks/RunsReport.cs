using System.Globalization;
using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Benchmarks;

/// <summary>How long the cable runs of a house take as it grows: two storeys of rooms, the console at one corner, the display at the other.</summary>
internal static class RunsReport
{
    // As many rooms on each storey: up to a large house, and far beyond.
    private static readonly int[] Sides = [5, 10, 20];

    internal static Goal Print(TextWriter output)
    {
        output.WriteLine("Cable runs of one spot, two storeys, structure laid out and searched, one thread");
        output.WriteLine("rooms a storey   seconds   over the first");
        double first = 0, last = 0;
        foreach (int side in Sides)
        {
            House house = Cabled(side);
            last = Stopwatches.Seconds(() => new RunPlanner(house).Plan(house.Spots[0]), rounds: 2);
            first = first == 0 ? last : first;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{side * side,14}  {last,8:F3}  {last / first,15:F1}"));
        }

        return new Goal("cable runs, 400 rooms a storey against 25: 16 times the rooms", last / first, 40, 20, IsMost: true);
    }

    private static House Cabled(int side)
    {
        House house = SyntheticHouse.TwoStoreys(side);
        var kind = new CableKind("optical", CableUse.Picture, 0.005, 0.03, true, new PlugSize(0.021, 0.012), "made up for timing") { Reaches = [new Reach(48, 500, 500)] };
        var place = new CablePlace("display", 0, house.Seats[0].Plan, 1, null);
        return house with { Cabling = new Cabling { Displays = [new Display("display", place, [DisplayInput.Direct], PictureSignal.Usual)], Kinds = [kind] } };
    }
}
