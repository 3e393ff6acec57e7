using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>
/// Chooses among places for the console's radio, by links computed backwards. Leads of several lengths reach many of the same places: what was computed
/// at a place is kept.
/// </summary>
internal sealed class NearbyPlaces
{
    // By the median the best is among the first few.
    private const int Judged = 4;

    private readonly RemedyTrial trial;
    private readonly Lazy<BackwardSurvey> survey;
    private readonly Dictionary<Standing, double> medianDb = [];
    private readonly Dictionary<Standing, double> judgedDb = [];

    /// <summary>Prepares to choose.</summary>
    public NearbyPlaces(RemedyTrial trial)
    {
        this.trial = trial;
        survey = new(() => new BackwardSurvey(trial.Model, [.. trial.Before.Budgets.Select(budget => budget.Seat)]));
    }

    /// <summary>
    /// The best of some places; null where there are none. Where none of the first few by the median could help, it is the first of them: that
    /// will not be reported.
    /// </summary>
    public Standing? BestOf(IReadOnlyList<Standing> places)
    {
        if (places.Count == 0)
        {
            return null;
        }

        Look(places, medianDb, some => survey.Value.WeakestHeadroomDb(some));
        Standing[] first = [.. places.OrderByDescending(place => medianDb[place]).Take(Judged)];
        if (!Array.Exists(first, CouldHelp))
        {
            return first[0];
        }

        Look(first, judgedDb, some => trial.Judge.WeakestHeadroomDb(trial.Model, survey.Value.Store(some), survey.Value.Seats, [.. some.Select(survey.Value.PointOf)]));
        return first.MaxBy(place => judgedDb[place]);
    }

    private bool CouldHelp(Standing place)
    {
        Seat seat = trial.WeakestSeat;
        return trial.CouldHelp(seat, survey.Value.HeadroomDb(seat, place) + PlaceSearch.JudgedSlackDb);
    }

    private static void Look(IReadOnlyList<Standing> places, Dictionary<Standing, double> known, Func<IReadOnlyList<Standing>, double[]> headroomDb)
    {
        Standing[] unknown = [.. places.Where(place => !known.ContainsKey(place)).Distinct()];
        foreach ((Standing place, double db) in unknown.Zip(headroomDb(unknown)))
        {
            known.Add(place, db);
        }
    }
}
