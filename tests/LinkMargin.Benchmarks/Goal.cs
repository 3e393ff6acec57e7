using System.Globalization;

namespace LinkMargin.Benchmarks;

/// <summary>A ratio that was asked for, and what it came to.</summary>
/// <param name="Work">What is compared with what.</param>
/// <param name="Measured">The ratio.</param>
/// <param name="Bar">What it must come to.</param>
/// <param name="Aim">What it should come to.</param>
/// <param name="IsMost">Whether it must be no more than that, rather than no less.</param>
internal sealed record Goal(string Work, double Measured, double Bar, double Aim, bool IsMost = false)
{
    private bool IsMet => IsMost ? Measured <= Bar : Measured >= Bar;

    /// <summary>Prints goals as a table.</summary>
    internal static void Print(TextWriter output, IEnumerable<Goal> goals)
    {
        output.WriteLine("What was asked for                                                                measured     bar     aim");
        foreach (Goal goal in goals)
        {
            string sign = goal.IsMost ? "<=" : ">=";
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{goal.Work,-80}  {goal.Measured,8:G3}  {sign}{goal.Bar,4:G3}  {sign}{goal.Aim,4:G3}  {(goal.IsMet ? "met" : "not met")}"));
        }
    }
}
