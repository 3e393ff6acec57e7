using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Plans;

namespace LinkMargin.Plots.Maps;

/// <summary>What a map writes behind a seat's name.</summary>
internal static class SeatFigure
{
    /// <summary>
    /// The margin; and what the seat asks for, where its answer would seem to contradict the hatch, which tells of the
    /// map's own required margin.
    /// </summary>
    public static string Of(SeatMark mark, double requiredDb)
    {
        bool agreesWithHatch = mark.Passes == ((mark.MarginAtConfidenceDb ?? mark.MarginDb) >= requiredDb);
        string needs = agreesWithHatch ? "" : $" (needs {MarginText.AsWritten(mark.Seat.RequiredDb)})";
        return MarginText.WithUnit(mark.MarginDb, mark.Seat.RequiredDb) + needs;
    }
}
