using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Yaml;

/// <summary>The file being read: its name, what was found wrong in it so far, and the unit of its bare lengths.</summary>
internal sealed class Source(string file, ICollection<Problem> problems)
{
    /// <summary>The file as the person named it.</summary>
    public string File { get; } = file;

    /// <summary>Everything found so far.</summary>
    public ICollection<Problem> Problems { get; } = problems;

    /// <summary>What a length without a unit is in.</summary>
    public LengthUnit BareUnit { get; set; } = LengthUnit.Metre;

    /// <summary>How messages about the file give lengths.</summary>
    public LengthFormat Lengths => new(BareUnit);

    /// <summary>What a file of this kind begins with, for a message.</summary>
    public string Example { get; init; } = "house: Name";

    /// <summary>How large a file of this kind usually is, for a message.</summary>
    public string Usual { get; init; } = "a house takes a few kilobytes";

    /// <summary>How to get a file of this kind to start from, for a message.</summary>
    public string Start { get; init; } = "'linkmargin new FILE' writes one to start from";

    /// <summary>Records what must be corrected.</summary>
    public void Error(Mark mark, string message) => Problems.Add(new Problem(File, mark, Severity.Error, message));

    /// <summary>Records what looks wrong.</summary>
    public void Warning(Mark mark, string message) => Problems.Add(new Problem(File, mark, Severity.Warning, message));

    /// <summary>
    /// The end of a message about a wrong word, as <see cref="NearestWord.Advice"/> gives it. Not sought once the message
    /// will not be reported, so that a file of nothing but wrong words takes no longer.
    /// </summary>
    public string Advice(string word, IReadOnlyCollection<string> candidates, string? whereListed = null, Func<string, string?>? otherwise = null) =>
        Problems is ProblemList { IsFull: true } ? ""
        : NearestWord.Find(word, candidates) is null && otherwise?.Invoke(word) is { } advice ? advice
        : NearestWord.Advice(word, candidates, whereListed);
}
