namespace LinkMargin.Web.Live;

/// <summary>Announces the share done of some work a few times a second, however often it changes, and never a smaller one than before.</summary>
/// <param name="announce">Called with a share, 0 to 1.</param>
internal sealed class Pace(Action<double> announce)
{
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(200);

    private readonly Lock gate = new();
    private long announcedAt = Environment.TickCount64;
    private double greatest;

    /// <summary>Takes the share done. May be called from any thread.</summary>
    public void Reach(double share)
    {
        lock (gate)
        {
            greatest = Math.Max(greatest, Math.Min(1, share));
            if (Environment.TickCount64 - announcedAt < Interval.TotalMilliseconds)
            {
                return;
            }

            announcedAt = Environment.TickCount64;
            share = greatest;
        }

        announce(share);
    }
}
