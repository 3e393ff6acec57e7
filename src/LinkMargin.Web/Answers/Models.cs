using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Web.Answers;

/// <summary>
/// Keeps the last few models of houses. Moving a spot or a seat does not change anything that a model depends on, so the same
/// model is used again.
/// </summary>
internal sealed class Models
{
    private const int Most = 4;

    private readonly Lock gate = new();
    private readonly LinkedList<(House House, string[] People, Lazy<LinkModel> Model)> ready = new();

    /// <summary>The model of a house with people on some seats.</summary>
    public LinkModel For(House house, IReadOnlyList<Seat> occupied)
    {
        Lazy<LinkModel> model;
        lock (gate)
        {
            // Where people are depends on their seats.
            string[] people = [.. occupied.Select(seat => seat.ToString())];
            for (var node = ready.First; node is not null; node = node.Next)
            {
                if (IsSame(node.Value.House, house) && node.Value.People.SequenceEqual(people))
                {
                    ready.Remove(node);
                    ready.AddFirst(node);
                    return node.Value.Model.Value;
                }
            }

            model = new Lazy<LinkModel>(() => new LinkModel(house, ModelDepth.Full, occupied));
            ready.AddFirst((house, people, model));
            if (ready.Count > Most)
            {
                ready.RemoveLast();
            }
        }

        return model.Value;
    }

    private static bool IsSame(House one, House other) =>
        ReferenceEquals(one.Levels, other.Levels) && ReferenceEquals(one.Fixtures, other.Fixtures)
        && one.Console == other.Console && one.Controller == other.Controller;
}
