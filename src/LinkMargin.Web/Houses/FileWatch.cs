using LinkMargin.Files.Writing;

namespace LinkMargin.Web.Houses;

/// <summary>Looks now and then whether the house file has changed on disk. Notices of the system are lost on network drives and with editors that replace files; a look is not.</summary>
internal sealed class FileWatch : IDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    private readonly TriedHouse tried;
    private readonly Timer timer;
    private (DateTime Written, long Length) seen;
    private int isLooking;

    /// <summary>Begins to look.</summary>
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
            // Being replaced just now, or gone for a while; the next look tells.
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
