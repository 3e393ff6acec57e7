using System.Threading.Channels;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Live;

/// <summary>
/// What a page wants to see: its latest request, with a token that says whether it still is. The two are set and taken together; a token taken
/// before its request could be cancelled by that very request, and what it stops would never be done.
/// </summary>
internal sealed class Wishes : IDisposable
{
    private readonly Channel<bool> wake = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly Lock gate = new();
    private WatchRequest? latest;
    private CancellationTokenSource current = new();

    /// <summary>Something may have to be sent.</summary>
    public void Wake() => wake.Writer.TryWrite(true);

    /// <summary>What was wanted is out of date: stops the work on it, and wakes.</summary>
    /// <param name="request">The new request; null where only the house has changed.</param>
    public void Change(WatchRequest? request = null)
    {
        lock (gate)
        {
            latest = request ?? latest;
            Renew();
        }

        Wake();
    }

    /// <summary>Stops the work on the latest request.</summary>
    public void Stop()
    {
        lock (gate)
        {
            Renew();
        }
    }

    /// <summary>The latest request, null before the first, and a token that the next change cancels.</summary>
    public (WatchRequest? Request, CancellationToken StillWanted) Take()
    {
        lock (gate)
        {
            return (latest, current.Token);
        }
    }

    /// <summary>Waits to be woken, again and again; what wakes while nobody waits is one wake.</summary>
    public IAsyncEnumerable<bool> Woken(CancellationToken cancellation) => wake.Reader.ReadAllAsync(cancellation);

    /// <inheritdoc/>
    public void Dispose() => current.Dispose();

    private void Renew()
    {
        current.Cancel();
        current.Dispose();
        current = new CancellationTokenSource();
    }
}
