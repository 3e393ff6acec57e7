using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Yaml;

/// <summary>The file being read: its name, the problems found so far, and the unit of its bare lengths.</summary>
internal sealed class Source(string file, ICollection<Problem> problems)
{
    /// <summary>The file as the person named it.</summary>
    public string File { get; } = file;

    /// <summary>The problems found so far.</summary>
    public ICollection<Problem> Problems { get; } = problems;

    /// <summary>The unit of lengths without one.</summary>
    public LengthUnit BareUnit { get; set; } = LengthUnit.Metre;

    /// <summary>How messages about the file write lengths.</summary>
    public LengthFormat Lengths => new(BareUnit);

    /// <summary>How a file of this kind starts, for a message.</summary>
    public string Example { get; init; } = "house: Name";

    /// <summary>The usual size of a file of this kind, for a message.</summary>
    public string Usual { get; init; } = "a house file usually has a few kilobytes";

    /// <summary>How to get a first file of this kind, for a message.</summary>
    public string Start { get; init; } = "'linkmargin new FILE' writes one to start from";

    /// <summary>Records something that must be fixed.</summary>
    public void Error(Mark mark, string message) => Problems.Add(new Problem(File, mark, Severity.Error, message));

    /// <summary>Records something that looks wrong.</summary>
    public void Warning(Mark mark, string message) => Problems.Add(new Problem(File, mark, Severity.Warning, message));

    /// <summary>
    /// The end of a message about a wrong word; see <see cref="NearestWord.Advice"/>. Empty once errors are no longer reported, so that
    /// a file full of wrong words takes no longer.
    /// </summary>
    public string Advice(string word, IReadOnlyCollection<string> candidates, string? whereListed = null, Func<string, string?>? otherwise = null) =>
        Problems is ProblemList { IsFull: true } ? ""
        : NearestWord.Find(word, candidates) is null && otherwise?.Invoke(word) is { } advice ? advice
        : NearestWord.Advice(word, candidates, whereListed);
}
