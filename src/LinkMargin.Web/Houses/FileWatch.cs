using LinkMargin.Files.Writing;

namespace LinkMargin.Web.Houses;

/// <summary>Polls the house file for changes. Polling also works on network drives and with editors that replace files, unlike notifications.</summary>
internal sealed class FileWatch : IDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    private readonly TriedHouse tried;
    private readonly Timer timer;
    private (DateTime Written, long Length) seen;
    private int isLooking;

    /// <summary>Starts polling.</summary>
    public FileWatch(TriedHouse tried)
    {
        this.tried = tried;
        seen = Look();
        timer = new Timer(_ => Tick(), null, BetweenLooks, BetweenLooks);
    }

    /// <inheritdoc/>
    public void Dispose() => timer.Dispose();

    private void Tick()
    {
        if (Interlocked.Exchange(ref isLooking, 1) == 1)
        {
            return;
        }

        try
        {
            (DateTime Written, long Length) now = Look();
            if (now != seen)
            {
                tried.Reload();
                seen = now;
            }
        }
        catch (FileProblemException)
        {
            // The file is being replaced, or gone for a while; the next poll will tell.
        }
        finally
        {
            Interlocked.Exchange(ref isLooking, 0);
        }
    }

    private (DateTime Written, long Length) Look()
    {
        var file = new FileInfo(tried.Source.Path);
        return file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
    }
}
