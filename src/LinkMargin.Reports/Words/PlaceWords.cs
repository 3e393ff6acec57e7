using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Reports.Words;

/// <summary>Places on the plan, in words.</summary>
internal static class PlaceWords
{
    /// <summary>How far east and how far north: <c>(3.70, 5.40)</c>, <c>(12ft 2in, 17ft 9in)</c>.</summary>
    public static string At(Point2 plan, LengthFormat lengths) => lengths.InFeet
        ? $"({lengths.Brief(plan.X)}, {lengths.Brief(plan.Y)})"
        : string.Create(CultureInfo.InvariantCulture, $"({plan.X:0.00}, {plan.Y:0.00})");

    /// <summary>What such places are, for once on each output that has them; without a full stop.</summary>
    public static string Note(LengthFormat lengths) => $"In brackets: how far east and how far north{(lengths.InFeet ? "" : ", in metres")}";
}
