using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>Turns stored links into vectors over the same unknowns: rows of the material table, and each material in each place, and what the model leaves out on each link.</summary>
internal sealed class LossVectors(UncertaintyBasis basis)
{
    private readonly Dictionary<(int Material, int? Place), int> numbers = [];
    private readonly Dictionary<(string Spot, string Seat), int> links = [];

    /// <summary>How the level of a seat's own link goes with the unknowns, what the model leaves out on it included.</summary>
    internal LossVector OfSeat(StoredPaths stored, StoredLink link, LinkModel model, Spot spot, Seat seat, bool withDevice)
    {
        LossVector vector = Of(stored, link, withDevice);
        FittedLink? read = basis.Fitted?.Find(model.House.PositionOf(spot), model.House.PositionOf(seat));
        if (!links.TryGetValue((spot.Name, seat.Name), out int number))
        {
            links.Add((spot.Name, seat.Name), number = -1 - links.Count);
        }

        vector.Put(number, read?.SpreadDb ?? basis.Spreads.ModelDb);
        return vector;
    }

    /// <summary>How the level of a link goes with the unknowns, at the tables' losses.</summary>
    internal LossVector Of(StoredPaths stored, StoredLink link, bool withDevice)
    {
        double[] gradient = new double[stored.Parameters.Count];
        link.PathLossDb(new double[gradient.Length], gradient);
        var shared = new SharedLosses(stored.Materials, basis);
        Vector<double> rows = Vector<double>.Build.DenseOfEnumerable(shared.ByRow(gradient).Select((slope, row) => -slope * shared.SpreadsDb[row]));
        if (shared.Together is { } together)
        {
            rows = together.LeftMultiply(rows);
        }

        var slopes = new Dictionary<int, double>();
        for (int row = 0; row < rows.Count; row++)
        {
            Put((-1 - row, null), rows[row]);
        }

        double[] own = PlaceSpreads.Of(stored, basis);
        for (int p = 0; p < gradient.Length; p++)
        {
            if (stored.Parameters[p] is { Place: { } place } parameter)
            {
                Put((parameter.Material, place), -gradient[p] * own[parameter.Material]);
            }
        }

        return new LossVector(slopes, withDevice);

        void Put((int Material, int? Place) unknown, double slope)
        {
            if (slope != 0)
            {
                if (!numbers.TryGetValue(unknown, out int number))
                {
                    numbers.Add(unknown, number = numbers.Count);
                }

                slopes[number] = slope;
            }
        }
    }
}
