using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Places;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Uncertainty;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Pictures;
using LinkMargin.Reports.Words;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Drawing;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Live;

/// <summary>Runs searches in the background, one at a time; all pages get the results.</summary>
internal sealed class Jobs(TriedHouse tried, Models models, double confidence) : IDisposable
{
    /// <summary>The search for places.</summary>
    public const string Place = "place";

    /// <summary>The search for what would help a spot.</summary>
    public const string Improve = "improve";

    /// <summary>A report in the making. It answers the request for it; only its progress is announced here.</summary>
    public const string Report = "report";

    private readonly Lock gate = new();
    private CancellationTokenSource? running;
    private Message? last;

    /// <summary>Called, on any thread, with each message for the pages.</summary>
    public event Action<Message>? Told;

    /// <summary>The messages for a page that opens now.</summary>
    public IReadOnlyList<Message> Last
    {
        get
        {
            lock (gate)
            {
                return last is null ? [] : [last];
            }
        }
    }

    /// <summary>Starts a search; a running one is stopped.</summary>
    public void Start(string job, string spotName)
    {
        HouseState state = tried.Current;
        Spot spot = state.Now.House.Spots.FirstOrDefault(one => one.Name == spotName)
            ?? throw new CannotBeDoneException($"there is no spot {Quote.Of(spotName)}");
        if (job is not (Place or Improve))
        {
            throw new CannotBeDoneException($"there is no search {Quote.Of(job)}");
        }

        CancellationTokenSource mine = new();
        lock (gate)
        {
            running?.Cancel();
            running = mine;
            last = null;
        }

        Tell(new ProgressMessage(job, 0));
        _ = Task.Run(() => Run(job, state, spot, mine.Token), CancellationToken.None);
    }

    /// <summary>Announces the progress of a job to all pages.</summary>
    public Pace PaceOf(string job) => new(share => Tell(new ProgressMessage(job, share)));

    /// <summary>Stops the running search.</summary>
    public void Stop()
    {
        lock (gate)
        {
            running?.Cancel();
            running = null;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Stop();

    private void Run(string job, HouseState state, Spot spot, CancellationToken cancellation)
    {
        try
        {
            JobMessage result = job == Place ? SearchPlaces(state, spot, cancellation) : SearchRemedies(state, spot, cancellation);
            lock (gate)
            {
                cancellation.ThrowIfCancellationRequested();
                last = result;
            }

            Tell(result);
        }
        catch (OperationCanceledException)
        {
            Tell(new JobMessage(job, state.Version, "Stopped.", [], []));
        }
        catch (Exception fault) when (fault is CannotBeDoneException or ArgumentException or InvalidOperationException)
        {
            Tell(new JobMessage(job, state.Version, Quote.Sentence(fault.Message), [], []));
        }
    }

    private JobMessage SearchPlaces(HouseState state, Spot spot, CancellationToken cancellation)
    {
        House house = state.Now.House;
        var search = new PlaceSearch(models.For(house, state.Occupied), new PlaceRequest(), new JudgeAtConfidence(state.Now.Uncertainty, confidence));
        if (!search.HasSeats || search.Places.Count == 0)
        {
            return new JobMessage(Place, state.Version, search.HasSeats ? "There is no free place for a console." : "Every seat already plays a console at a named spot, so there is nothing to place.", [], []);
        }

        int done = 0;
        Pace pace = PaceOf(Place);
        PlaceResult result = search.Run(() => pace.Reach((double)Interlocked.Increment(ref done) / search.Places.Count), cancellation);
        return new JobMessage(
            Place,
            state.Version,
            FormattableString.Invariant($"The best of {result.LookedAt} places. Choose one to try '{spot.Name}' there. {Now(state, spot)}"),
            [.. result.Best.Select(placed => Of(state, spot, placed))],
            [Cautions.Estimates]);
    }

    // What the places are to be compared with.
    private string Now(HouseState state, Spot spot)
    {
        Seat[] seats = [.. state.Now.House.Seats.Where(seat => seat.IsPlayedAt(spot))];
        return seats.Length == 0
            ? ""
            : WordsOf($"Now, at '{spot.Name}'", new JudgeAtConfidence(state.Now.Uncertainty, confidence).Score(models.For(state.Now.House, state.Occupied), spot, seats));
    }

    private static string WordsOf(string where, SpotScore score) => $"{where}: {Tenths.Signed(Headroom.TenthsOf(score))} dB; {SeatWords.Passing(score)}; {MapFindings.Weakest(score)}.";

    private static JobResult Of(HouseState state, Spot spot, PlacedSpot placed)
    {
        Standing place = placed.Place;
        string level = state.Now.House.Levels[place.LevelIndex].Name;
        return new JobResult(
            place.Where.Length > 0 ? $"{MapFindings.Capital(place.Where)} ({level})" : $"Floor of {level}",
            $"{state.Now.Lengths.Brief(place.HeightMetres)} high; {SeatWords.Passing(placed.Score)}; {MapFindings.Weakest(placed.Score)}",
            $"{Tenths.Signed(Headroom.TenthsOf(placed.Score))} dB",
            [new HouseChange(ChangeKinds.MoveSpot) { Name = spot.Name, Level = place.LevelIndex, X = place.Plan.X, Y = place.Plan.Y, Height = place.HeightMetres }])
        {
            Level = place.LevelIndex,
            X = place.Plan.X,
            Y = place.Plan.Y,
        };
    }

    private JobMessage SearchRemedies(HouseState state, Spot spot, CancellationToken cancellation)
    {
        House house = state.Now.House;
        if (!house.Seats.Any(seat => seat.IsPlayedAt(spot)))
        {
            return new JobMessage(Improve, state.Version, $"No seat plays a console at '{spot.Name}'.", [], []);
        }

        var search = new ImproveSearch(
            house, models.For(house, state.Occupied), ImproveRequests.For(spot, state.Now.Tables), new JudgeAtConfidence(state.Now.Uncertainty, confidence));
        Pace pace = PaceOf(Improve);
        ImproveResult result = search.Run(pace.Reach, cancellation);
        var words = new RemedyWords(state.Now);
        RemedyResult[] all = [.. result.Pairs.Where(pair => pair.After.PassesAll), .. result.Alone, .. result.Pairs.Where(pair => !pair.After.PassesAll)];
        return new JobMessage(
            Improve,
            state.Version,
            FormattableString.Invariant($"Remedies that help '{spot.Name}', of {result.Tried} tried. Choose one to try it. {WordsOf("Now", result.Before)}"),
            [.. all.Select(one => Of(house, result, words, one))],
            [.. all.SelectMany(one => one.Remedies).Select(words.Mind).Where(mind => mind.Length > 0).Distinct(), Cautions.Estimates]);
    }

    private static JobResult Of(House house, ImproveResult result, RemedyWords words, RemedyResult one)
    {
        HouseChange[] changes = [.. one.Remedies.SelectMany(remedy => remedy.Edits).SelectMany(ChangeWords.Of)];
        (int Level, Point2 Plan)? place = changes.Select(change => ChangePlace.Of(house, change)).FirstOrDefault(found => found is not null);
        return new JobResult(
            MapFindings.Capital(string.Join(", and ", one.Remedies.Select(words.What))),
            $"effort: {RemedyWords.EffortOf(one.Effort)}; {SeatWords.Passing(one.After)}; {MapFindings.Weakest(one.After)}",
            $"{Tenths.Signed(Headroom.TenthsOf(one.After) - Headroom.TenthsOf(result.Before))} dB",
            changes)
        {
            Level = place?.Level,
            X = place?.Plan.X,
            Y = place?.Plan.Y,
        };
    }

    private void Tell(Message message) => Told?.Invoke(message);
}
