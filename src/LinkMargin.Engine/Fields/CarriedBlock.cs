namespace LinkMargin.Engine.Fields;

/// <summary>
/// A block of cells over which reflected power is interpolated from its corners, and from its middle where that is traced as well: linear
/// in both directions, in the fourth root of the power, in which a reflection that fades out and one that falls off are both nearly linear.
/// </summary>
internal readonly struct CarriedBlock
{
    private readonly CellBlock block;
    private readonly double southWest;
    private readonly double southEast;
    private readonly double northWest;
    private readonly double northEast;
    private readonly double middle; // how much more the middle has than its corners give

    /// <summary>Makes a block from the powers at its corners.</summary>
    internal CarriedBlock(CellBlock block, double southWest, double southEast, double northWest, double northEast)
    {
        this.block = block;
        this.southWest = Root(southWest);
        this.southEast = Root(southEast);
        this.northWest = Root(northWest);
        this.northEast = Root(northEast);
    }

    private CarriedBlock(in CarriedBlock corners, double middle)
    {
        this = corners;
        this.middle = middle;
    }

    /// <summary>The greatest power at a corner.</summary>
    internal double Greatest => Power(Math.Max(Math.Max(southWest, southEast), Math.Max(northWest, northEast)));

    /// <summary>The least power at a corner.</summary>
    internal double Least => Power(Math.Min(Math.Min(southWest, southEast), Math.Min(northWest, northEast)));

    /// <summary>The same with the power in the middle.</summary>
    internal CarriedBlock WithMiddle(double power) =>
        new(this, Root(power) - Linear(block.MiddleColumn, block.MiddleRow));

    /// <summary>The power at a cell.</summary>
    internal double At(int column, int row) =>
        Power(Math.Max(0, Linear(column, row) + (middle == 0 ? 0 : middle * Math.Min(
            Slope(block.West, block.MiddleColumn, block.East, column), Slope(block.South, block.MiddleRow, block.North, row)))));

    private static double Root(double power) => Math.Sqrt(Math.Sqrt(power));

    private static double Power(double root) => root * root * root * root;

    // 1 in the middle, 0 at both ends.
    private static double Slope(int first, int middle, int last, int at) => at <= middle
        ? (middle > first ? (double)(at - first) / (middle - first) : 1)
        : (double)(last - at) / (last - middle);

    private double Linear(int column, int row)
    {
        double x = block.Width > 0 ? (double)(column - block.West) / block.Width : 0, y = block.Height > 0 ? (double)(row - block.South) / block.Height : 0;
        double south = southWest + (x * (southEast - southWest)), north = northWest + (x * (northEast - northWest));
        return south + (y * (north - south));
    }
}
