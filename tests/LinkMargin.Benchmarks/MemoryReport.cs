using System.Diagnostics;
using System.Globalization;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;

namespace LinkMargin.Benchmarks;

/// <summary>How much memory a fine field of the demo house takes, in a process that does nothing else.</summary>
internal static class MemoryReport
{
    private const double CellMetres = 0.05;

    /// <summary>Prints the greatest memory the process has held, in megabytes, with the field's numbers still in it.</summary>
    internal static void Print(TextWriter output)
    {
        House house = DemoFields.House();
        var model = new LinkModel(house);
        Field[] fields = [.. house.Levels.Select((_, level) => FieldComputation.Compute(
            model, new FieldRequest(house.Spots[0], level) { CellMetres = CellMetres }))];
        using var self = Process.GetCurrentProcess();
        output.WriteLine((self.PeakWorkingSet64 / 1e6).ToString("F0", CultureInfo.InvariantCulture));
        GC.KeepAlive(fields);
    }

    /// <summary>The same, asked of a process of its own.</summary>
    internal static double MegabytesOfAnotherProcess()
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, "memory") { RedirectStandardOutput = true };
        using Process other = Process.Start(start)!;
        string said = other.StandardOutput.ReadToEnd();
        other.WaitForExit();
        return double.Parse(said, CultureInfo.InvariantCulture);
    }
}
