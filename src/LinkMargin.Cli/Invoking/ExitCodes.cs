namespace LinkMargin.Cli.Invoking;

/// <summary>What the program returns to the script that ran it.</summary>
internal static class ExitCodes
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Done, and a seat is below its required margin at every spot asked about.</summary>
    public const int SeatFails = 1;

    /// <summary>Could not be done.</summary>
    public const int CouldNotBeDone = 2;

    /// <summary>Stopped by Ctrl-C: 128 plus the signal's number, the convention of shells.</summary>
    public const int Interrupted = 130;

    /// <summary>Stopped by SIGTERM.</summary>
    public const int Terminated = 143;

    /// <summary>The same in words, for the program's help.</summary>
    public const string Explained =
        "Exit codes: 0 done; 1 done, but a seat does not pass (explain), at the spot it is about (report), at any spot (compare), at the best place "
        + "(place) or with any remedy (improve); 2 could not be done; 130 stopped by Ctrl-C, 143 by SIGTERM, with no file left "
        + "half-written.";

    /// <summary>The same for the help of one command.</summary>
    /// <param name="seatFails">What <see cref="SeatFails"/> means for this command; null if it never returns it.</param>
    public static string Of(string? seatFails = null) =>
        $"\n\nExit codes: 0 done; {(seatFails is null ? "" : $"1 done, but {seatFails}; ")}2 could not be done; 130 or 143 stopped.";
}
