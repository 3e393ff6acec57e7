namespace LinkMargin.Engine.Houses;

/// <summary>What the words for how often a seat is used stand for, in days of a month.</summary>
public static class Use
{
    /// <summary>Every day.</summary>
    public const double DailyDays = 30;

    /// <summary>Once a week.</summary>
    public const double WeeklyDays = 4;

    /// <summary>Once a month.</summary>
    public const double RarelyDays = 1;
}
