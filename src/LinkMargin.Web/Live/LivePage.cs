using System.Text.Json;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Problems;
using LinkMargin.Reports.Houses;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Live;

/// <summary>
/// One open page. It says what it wants to see; only its latest request counts, so nothing queues up while the user drags. Seats
/// are sent first, then a coarse map, then, once nothing moves, a fine map and the comparison of all spots.
/// </summary>
internal sealed class LivePage : IDisposable
{
    // Maps sent but not yet painted: one in progress and one on its way.
    private const int MostUnpainted = 2;

    // A pointer that does not move for this long rests. Exact figures before that would take the processors from the map and from the next move.
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    private readonly PageSocket socket;
    private readonly PageServices services;
    private readonly Wishes wishes = new();
    private int unpainted;
    private int toldVersion, comparedVersion, cabledVersion;
    private bool hasScale, isApproximate;
    private double allowanceDb; // median less margin to count on, at the seats
    private DrawnSeats? drawn; // the draws at the last place that got exact figures
    private CoarseMap? mapped; // the last one

    /// <summary>Makes the page.</summary>
    public LivePage(PageSocket socket, PageServices services) => (this.socket, this.services) = (socket, services);

    /// <summary>Serves it until it is closed or the server stops.</summary>
    public async Task Run(CancellationToken stopping)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        services.Tried.Changed += HouseChanged;
        services.Jobs.Told += Send;
        wishes.Wake();
        foreach (Message message in services.Jobs.Last)
        {
            Send(message);
        }

        try
        {
            await socket.Run(Take, Work, ended);
        }
        finally
        {
            services.Tried.Changed -= HouseChanged;
            services.Jobs.Told -= Send;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => wishes.Dispose();

    private void HouseChanged() => wishes.Change();

    private void Send(Message message) => socket.Send(message);

    private void Take(byte[] buffer, int count)
    {
        WatchRequest? request;
        try
        {
            request = JsonSerializer.Deserialize(buffer.AsSpan(0, count), PageJson.Default.WatchRequest);
        }
        catch (JsonException)
        {
            return; // Not a message of our page.
        }

        if (request?.Type == "painted")
        {
            if (Interlocked.Decrement(ref unpainted) < 0)
            {
                Interlocked.Increment(ref unpainted); // more painted than were sent
            }

            wishes.Wake();
        }
        else if (request?.Type == "watch")
        {
            wishes.Change(request);
        }
    }

    private async Task Work(CancellationToken cancellation)
    {
        // How far each answer has come: figures, coarse maps, everything. What is stopped on the way goes on from there.
        (WatchRequest Request, int Version)? answered = null, shown = null, finished = null;
        await using CancellationTokenRegistration leaves = cancellation.Register(wishes.Stop);
        await foreach (bool _ in wishes.Woken(cancellation))
        {
            // The token is taken last: what changes from here on cancels it and wakes again.
            HouseState state = services.Tried.Current;
            TellHouse(state);
            (WatchRequest? wanted, CancellationToken stillWanted) = wishes.Take();
            if (wanted is not { } request || (request, state.Version) == finished)
            {
                continue;
            }

            (WatchRequest, int) asked = (request, state.Version);

            try
            {
                Moment? moment = MomentOf(state, request);
                if (moment is null)
                {
                    finished = asked;
                    continue;
                }

                if (asked != answered)
                {
                    if (request.Preview is null || !TellQuickly(moment))
                    {
                        TellFigures(moment);
                    }

                    answered = asked;
                }

                if (asked != shown)
                {
                    if (Volatile.Read(ref unpainted) >= MostUnpainted)
                    {
                        continue; // the next 'painted' message wakes this again
                    }

                    TellCoarse(moment, cancellation);
                    shown = asked;
                }

                if (request.Preview is null)
                {
                    if (comparedVersion == 0)
                    {
                        await TellComparison(state, stillWanted); // a new page shows the best spot
                    }

                    TellFine(moment, stillWanted);
                    await TellComparison(state, stillWanted);
                    await TellCables(state, stillWanted);
                }
                else if (isApproximate)
                {
                    await Task.Delay(Rest, stillWanted);
                    TellFigures(moment);
                }

                finished = asked;
            }
            catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
            {
                // A newer request has arrived, or word of a change that is known already; either has woken this again.
            }
            catch (Exception fault) when (fault is CannotBeDoneException or ArgumentException or InvalidOperationException)
            {
                Send(new NoticeMessage(Quote.Sentence(fault.Message), []));
                finished = asked;
            }
        }
    }

    private void TellHouse(HouseState state)
    {
        // New errors in the file also raise the version, so this message reports them too.
        if (state.Version != toldVersion)
        {
            toldVersion = state.Version;
            Send(HouseMessages.Of(services.Tried, state, services.Confidence));
        }
    }

    // The house with the dragged thing; null, with a message, if it cannot be there.
    private Moment? MomentOf(HouseState state, WatchRequest request)
    {
        try
        {
            (LoadedHouse now, IReadOnlyList<string> people, _) = request.Preview is { } preview
                ? Step.Try(state.Now, state.People, [preview])
                : (state.Now, state.People, null!);
            Spot? spot = now.House.Spots.FirstOrDefault(one => one.Name == request.Spot) ?? (now.House.Spots.Count > 0 ? now.House.Spots[0] : null);
            return spot is null ? null : new Moment(request, state, now, [.. now.House.Seats.Where(seat => people.Contains(seat.Name) && seat.FacingDegrees is not null)], spot);
        }
        catch (EditFaultException fault)
        {
            Send(new FiguresMessage(request.Generation, state.Version, request.Spot ?? "", $"Not here: this change {fault.Message}", []));
            return null;
        }
    }

    private bool TellQuickly(Moment moment)
    {
        if (services.Figures.Quick(moment.State, moment.Now, moment.Occupied, moment.Spot, drawn) is not { } figures)
        {
            return false;
        }

        Send(moment, figures);
        return isApproximate = true;
    }

    private void TellFigures(Moment moment)
    {
        drawn = services.Figures.Of(moment.State, moment.Now, moment.Occupied, moment.Spot);
        Send(moment, drawn.Figures);
        isApproximate = false;
        allowanceDb = drawn.Figures.Count > 0 ? drawn.Figures.Average(figure => figure.MedianDb - figure.CountOnDb) : 0;
    }

    private void Send(Moment moment, IReadOnlyList<SeatFigure> figures) =>
        Send(new FiguresMessage(moment.Request.Generation, moment.State.Version, moment.Spot.Name, SeatFigures.WordsOf(moment.Spot, figures), figures));

    private void TellCoarse(Moment moment, CancellationToken cancellation)
    {
        LinkModel model = services.Models.For(moment.Now.House, moment.Occupied);
        if (mapped is null || mapped.Model != model || mapped.Spot != moment.Spot)
        {
            mapped = new CoarseMap(model, moment.Spot, services.Fields.Coarse(model, moment.Spot, allowanceDb, cancellation));
        }

        // Where a console is let go, and while a seat is moved, the map stays as it is.
        IReadOnlyList<(Field Median, Field CountOn)> fields = mapped.Fields;
        if (!hasScale)
        {
            hasScale = true;
            Send(services.ScaleFor(fields.Select(field => field.CountOn)));
        }

        Interlocked.Increment(ref unpainted);
        for (int i = 0; i < fields.Count; i++)
        {
            SendField(moment, fields[i], i == fields.Count - 1 ? FieldFrame.IsLast : 0);
        }
    }

    // Does not block dragging: the work continues, and its result is sent once nothing moves.
    private async Task TellComparison(HouseState state, CancellationToken cancellation)
    {
        if (comparedVersion != state.Version)
        {
            Comparison comparison = await services.Comparisons.Of(state).WaitAsync(cancellation);
            comparedVersion = state.Version;
            Send(comparison.Message);
        }
    }

    private async Task TellCables(HouseState state, CancellationToken cancellation)
    {
        if (cabledVersion != state.Version)
        {
            CablesMessage cables = await services.Cables.Of(state).WaitAsync(cancellation);
            cabledVersion = state.Version;
            Send(cables);
        }
    }

    private void TellFine(Moment moment, CancellationToken cancellation)
    {
        foreach ((Field Median, Field CountOn) field in services.Fields.Fine(services.Models.For(moment.Now.House, moment.Occupied), moment.Spot, moment.Spot.LevelIndex, cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            SendField(moment, field, FieldFrame.IsFine);
        }
    }

    private void SendField(Moment moment, (Field Median, Field CountOn) field, int flags) =>
        socket.Send(FieldFrame.Of(moment.Request.Generation, moment.State.Version, flags, field.Median, field.CountOn));

    private sealed record CoarseMap(LinkModel Model, Spot Spot, IReadOnlyList<(Field Median, Field CountOn)> Fields);

    private sealed record Moment(WatchRequest Request, HouseState State, LoadedHouse Now, IReadOnlyList<Seat> Occupied, Spot Spot);
}
