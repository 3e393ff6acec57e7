using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Plans;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>What the signs of a map of the choice mean; only those that occur.</summary>
internal static class ChoiceKey
{
    public static IReadOnlyList<KeyEntry> Entries(House house, double pixelsPerMetre, double pixelsPerPoint, LengthUnit unit)
    {
        var entries = new List<KeyEntry>
        {
            ScaleBar.For(pixelsPerMetre, pixelsPerPoint, unit),
            MapKey.Mark(MarkKind.SpotHere, "place found", pixelsPerPoint),
            MapKey.Mark(MarkKind.SpotElsewhere, "spot of the house file", pixelsPerPoint),
            MapKey.Mark(MarkKind.SeatPlain, "seat", pixelsPerPoint),
            new(20, "hatched: some seat is short", (canvas, box) => MapKey.DrawHatch(canvas, box, pixelsPerPoint)),
        };
        if (house.Zones.Count > 0)
        {
            entries.Add(new(20, "zone where a console may stand", (canvas, box) =>
            {
                using SKPath outline = new();
                outline.AddRect(new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom));
                ZoneLayer.DrawOne(canvas, outline, pixelsPerPoint);
            }));
        }

        entries.Add(new(0, "figures: dB above or below what the weakest seat requires", (_, _) => { }));
        return entries;
    }
}
