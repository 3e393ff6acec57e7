using System.Diagnostics;
using System.Globalization;

namespace LinkMargin.Benchmarks.Mutations;

/// <summary>Reads spoilt files of each kind, and tells the seed of each that crashes its reader or takes it too long.</summary>
internal static class LongRun
{
    private const int UsualCount = 100_000;
    private const double MostSeconds = 1;

    // Seconds are the processor's, which a busy machine does not stretch; a slow one is read again, since the first reading
    // of its kind also compiles. One that never ends must still tell its seed.
    private const int Tries = 3;
    private const int HangSeconds = 60;

    /// <summary>Runs; the exit code says whether all was well.</summary>
    /// <param name="output">Where the report goes.</param>
    /// <param name="args">How many of each kind, the first seed, the kind; all may be left out.</param>
    public static int Print(TextWriter output, string[] args)
    {
        int count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : UsualCount;
        int first = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : Random.Shared.Next(1_000_000_000);
        bool isWell = true;
        foreach (MutationTarget target in MutationTarget.All.Where(t => args.Length < 3 || t.Name == args[2]))
        {
            isWell &= Run(target, first, count, output);
        }

        return isWell ? 0 : 1;
    }

    private static bool Run(MutationTarget target, int first, int count, TextWriter output)
    {
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{target.Name}: seeds {first} to {first + count - 1}"));
        int crashes = 0, slow = 0, refused = 0;
        double longest = 0;
        Stopwatch whole = Stopwatch.StartNew();
        using Watch watch = new(target.Name);
        for (int i = 0; i < count; i++)
        {
            int seed = first + i;
            (byte[] bytes, int example) = target.Spoilt(seed);
            watch.Begin(seed);
            try
            {
                double seconds = double.PositiveInfinity;
                for (int t = 0; t < Tries && seconds > MostSeconds; t++)
                {
                    TimeSpan begun = Environment.CpuUsage.TotalTime;
                    refused += target.ReadBytes(bytes, example) > 0 && t == 0 ? 1 : 0;
                    seconds = Math.Min(seconds, (Environment.CpuUsage.TotalTime - begun).TotalSeconds);
                }

                longest = Math.Max(longest, seconds);
                if (seconds > MostSeconds)
                {
                    slow++;
                    output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  seed {seed}: {seconds:F1} s"));
                }
            }
            catch (Exception e)
            {
                crashes++;
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  seed {seed}: {e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n')[0].Trim()}"));
            }
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {count} files, {refused} with problems, {crashes} crashes, {slow} over {MostSeconds} s, longest {longest:F2} s, {whole.Elapsed.TotalSeconds:F0} s in all"));
        return crashes + slow == 0;
    }

    /// <summary>Ends the process, with the seed told, where one file takes for ever.</summary>
    private sealed class Watch : IDisposable
    {
        private readonly Timer timer;
        private long begun;
        private int seed;

        public Watch(string name) => timer = new Timer(
            _ =>
            {
                if (begun != 0 && Stopwatch.GetElapsedTime(Volatile.Read(ref begun)).TotalSeconds > HangSeconds)
                {
                    Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: seed {seed} takes over {HangSeconds} s"));
                    Environment.Exit(1);
                }
            },
            null,
            TimeSpan.FromSeconds(1),
            TimeSpan.FromSeconds(1));

        public void Begin(int of)
        {
            seed = of;
            Volatile.Write(ref begun, Stopwatch.GetTimestamp());
        }

        public void Dispose() => timer.Dispose();
    }
}
