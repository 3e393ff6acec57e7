namespace LinkMargin.Cli.Invoking;

/// <summary>How much of some work is done; can be advanced from any thread.</summary>
/// <param name="total">All of it, above 0.</param>
internal sealed class Progress(long total)
{
    private long done;

    /// <summary>The share done, 0 to 1.</summary>
    public double Share => Math.Clamp((double)Interlocked.Read(ref done) / total, 0, 1);

    /// <summary>Records more work done.</summary>
    public void Advance(long more = 1) => Interlocked.Add(ref done, more);

    /// <summary>Records the total done so far.</summary>
    public void Reach(long so) => Interlocked.Exchange(ref done, so);
}
