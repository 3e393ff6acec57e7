namespace LinkMargin.Cli.Tests.Documents;

/// <summary>Terms that were replaced by plain or standard ones, as patterns of whole words, and what to write instead.</summary>
internal static class ReplacedTerms
{
    internal static readonly (string Old, string Use)[] All =
    [
        ("thrown back", "reflected"),
        ("throws? back", "reflects"),
        ("ways? round", "diffracted path"),
        ("doubt", "uncertainty"),
        ("asks for", "requires"),
        ("asked for", "required"),
        ("worked out anew", "recomputed"),
        ("anew", "again"),
        ("out by", "± one standard deviation"),
        ("left out \\(of", "leave-one-out"),
        ("a law of distance", "distance power law"),
        ("nine (times|cases) (in|of) ten", "with 90 % confidence"),
        ("picture cables?", "video cable"),
        ("is told|are told", "reported"),
        ("mend", "fix"),
        ("hold to|held to", "check against"),
        ("the talk", "messages"),
        ("dear", "expensive"),
        ("worst seat", "weakest seat"),
        ("seats? (is|are) met|(is|are) met by", "passes"),
        ("a reading|readings|the reading", "measurement"),
        ("mistakes?", "error"),
        ("whence", "from where"),
        ("bent round|round the (edge|corner|end)", "diffracted at"),
        ("just met|margin (not )?met", "passes"),
        ("stand in the way", "obstruct"),
        ("odd things?", "warning"),
        ("noughts?", "zero"),
    ];
}
