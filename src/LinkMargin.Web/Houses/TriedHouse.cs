using LinkMargin.Files.Changes;
using LinkMargin.Files.Edits;
using LinkMargin.Files.Journals;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Writing;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Web.Houses;

/// <summary>
/// A house file and the changes tried with it, shared by all pages that show it. Every change is in the journal before it takes
/// effect, so neither a crash nor a closed browser loses it. All members are thread-safe.
/// </summary>
internal sealed class TriedHouse : IDisposable
{
    /// <summary>More steps than anybody makes by hand; it keeps a page from filling the memory.</summary>
    public const int MostSteps = 5000;

    /// <summary>More changes than any step needs.</summary>
    public const int MostChangesOfStep = 64;

    private readonly Lock gate = new();
    private readonly HouseSource source;
    private readonly Journal journal;
    private readonly List<Step> steps = []; // undone ones too
    private readonly IReadOnlyList<string> peopleAtStart;
    private IReadOnlyList<IReadOnlyList<HouseChange>>? recoverable;
    private HouseOnDisk latest; // the file as on disk, even with errors
    private int done;
    private HouseState state;

    private TriedHouse(HouseSource source, Journal journal, HouseOnDisk disk, IReadOnlyList<string> people)
    {
        (this.source, this.journal, latest, peopleAtStart) = (source, journal, disk, people);
        state = new HouseState(1, disk, disk.Loaded!, disk.Loaded!, [], 0) { People = people };
        recoverable = EarlierSteps.Of(journal.Found) is { Count: > 0 } found ? found : null;
        RecoveryNote = EarlierSteps.NoteOf(journal.Found, disk.Hash);
        if (recoverable is null)
        {
            journal.Restart(disk.Hash, []);
        }
    }

    /// <summary>Called, on any thread, when the house or the status of its file has changed.</summary>
    public event Action? Changed;

    /// <summary>The house now.</summary>
    public HouseState Current
    {
        get
        {
            lock (gate)
            {
                return state;
            }
        }
    }

    /// <summary>The file and settings that the house is read with.</summary>
    public HouseSource Source => source;

    /// <summary>Its journal.</summary>
    public Journal Journal => journal;

    /// <summary>Errors and warnings of the file on disk; with an error in it, <see cref="Current"/> keeps the last valid house.</summary>
    public IReadOnlyList<Problem> Problems
    {
        get
        {
            lock (gate)
            {
                return latest.Problems;
            }
        }
    }

    /// <summary>How many steps of an earlier page can be recovered; 0 for none.</summary>
    public int Recoverable
    {
        get
        {
            lock (gate)
            {
                return recoverable?.Count ?? 0;
            }
        }
    }

    /// <summary>What the user should know about the earlier steps; empty if nothing.</summary>
    public string RecoveryNote { get; private set; }

    /// <summary>Opens a house file that has no errors.</summary>
    /// <exception cref="FileProblemException">It cannot be read, or the journal cannot be written.</exception>
    public static TriedHouse Open(HouseSource source, string stateFolder, IReadOnlyList<string> people)
    {
        HouseOnDisk disk = HouseOnDisk.Read(source);
        if (disk.Loaded is null)
        {
            throw new FileProblemException(source.Typed, "this file has errors; run 'linkmargin check' to see them");
        }

        return new TriedHouse(source, Journal.Open(source.Path, stateFolder), disk, people);
    }

    /// <summary>Makes one step of some changes.</summary>
    /// <exception cref="EditFaultException">One of them cannot be made; none was.</exception>
    /// <exception cref="FileProblemException">The journal cannot be written; none was made.</exception>
    public HouseState Do(IReadOnlyList<HouseChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        return Change(() =>
        {
            RefuseWhileRecoverable();
            if (changes.Count is 0 or > MostChangesOfStep || done >= MostSteps)
            {
                throw new EditFaultException("is more than this page can try at once; save your changes, or go back to the file");
            }

            (LoadedHouse now, IReadOnlyList<string> people, Step step) = Step.Try(state.Now, state.People, changes);
            journal.Add(new JournalEntry(JournalEntry.Change) { Changes = changes });
            steps.RemoveRange(done, steps.Count - done);
            steps.Add(step);
            done++;
            return state with { Now = now, People = people };
        });
    }

    /// <summary>Undoes the last step; does nothing if there is none.</summary>
    public HouseState Undo() => Change(() =>
    {
        RefuseWhileRecoverable();
        if (done == 0)
        {
            return state;
        }

        journal.Add(new JournalEntry(JournalEntry.Undo));
        done--;
        return Replayed(state.InFile, peopleAtStart, steps.Take(done).Select(step => step.Changes), out _);
    });

    /// <summary>Redoes the step that was undone last; does nothing if there is none.</summary>
    public HouseState Redo() => Change(() =>
    {
        RefuseWhileRecoverable();
        if (done == steps.Count)
        {
            return state;
        }

        journal.Add(new JournalEntry(JournalEntry.Redo));
        done++;
        (LoadedHouse now, IReadOnlyList<string> people, _) = Step.Try(state.Now, state.People, steps[done - 1].Changes);
        return state with { Now = now, People = people };
    });

    /// <summary>Recovers the steps of an earlier page, or discards them.</summary>
    /// <returns>The steps that no longer fit the file, in words.</returns>
    public IReadOnlyList<string> Recover(bool goOn)
    {
        IReadOnlyList<string> unfit = [];
        Change(() =>
        {
            IReadOnlyList<IReadOnlyList<HouseChange>> earlier = recoverable ?? [];
            recoverable = null;
            RecoveryNote = "";
            HouseState next = Replayed(state.InFile, peopleAtStart, goOn ? earlier : [], out unfit);
            journal.Restart(state.Disk.Hash, steps.Select(step => new JournalEntry(JournalEntry.Change) { Changes = step.Changes }));
            return next;
        });
        return unfit;
    }

    /// <summary>Reads the file on disk again and applies the steps to it.</summary>
    /// <returns>The steps that no longer fit the file, in words; null if the file is unchanged.</returns>
    public IReadOnlyList<string>? Reload(bool keepsSteps = true)
    {
        HouseOnDisk read = HouseOnDisk.Read(source);
        IReadOnlyList<string> unfit = [];
        lock (gate)
        {
            if (read.Hash == latest.Hash)
            {
                return null;
            }

            latest = read;
        }

        Change(() =>
        {
            if (read.Loaded is null)
            {
                return state with { };
            }

            HouseState next = Replayed(read.Loaded, peopleAtStart, keepsSteps ? steps.Take(done).Select(step => step.Changes).ToArray() : [], out unfit);
            if (recoverable is null)
            {
                journal.Restart(read.Hash, steps.Select(step => new JournalEntry(JournalEntry.Change) { Changes = step.Changes }));
            }

            return next with { Disk = read, InFile = read.Loaded };
        });
        return unfit;
    }

    /// <summary>Records that the file now has all changes; the page continues from it. The people on the seats are not in the file and stay.</summary>
    public void Saved()
    {
        IReadOnlyList<string> people = Current.People;
        Reload(keepsSteps: false);
        if (people.Count > 0)
        {
            Do([new HouseChange(ChangeKinds.People) { Seats = [.. people.Where(name => Current.Now.House.Seats.Any(seat => seat.Name == name))] }]);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            journal.Close(isEmpty: done == 0 && recoverable is null);
        }
    }

    private void RefuseWhileRecoverable()
    {
        if (recoverable is not null)
        {
            throw new EditFaultException("cannot be made yet; first continue with the changes from last time, or discard them");
        }
    }

    // Steps that no longer fit are dropped and reported.
    private HouseState Replayed(LoadedHouse inFile, IReadOnlyList<string> people, IEnumerable<IReadOnlyList<HouseChange>> all, out IReadOnlyList<string> unfit)
    {
        LoadedHouse now = inFile;
        List<Step> fit = [];
        List<string> left = [];
        foreach (IReadOnlyList<HouseChange> changes in all.ToArray())
        {
            try
            {
                (now, people, Step step) = Step.Try(now, people, changes);
                fit.Add(step);
            }
            catch (EditFaultException fault)
            {
                left.Add($"{string.Join(" and ", changes.Select(change => ChangeWords.Of(change, now.House, now.Unit)))}: {fault.Message}");
            }
        }

        unfit = left;
        if (left.Count > 0 || fit.Count > done || !ReferenceEquals(inFile, state.InFile))
        {
            steps.Clear();
            steps.AddRange(fit);
        }

        done = fit.Count;
        return state with { Now = now, People = people };
    }

    private HouseState Change(Func<HouseState> change)
    {
        HouseState next;
        lock (gate)
        {
            HouseState made = change();
            if (ReferenceEquals(made, state))
            {
                return state;
            }

            next = state = made with { Version = state.Version + 1, Steps = [.. steps.Take(done)], Undone = steps.Count - done };
        }

        Changed?.Invoke();
        return next;
    }
}
