using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Measurements;

/// <summary>One field of a line: its text without quotes and blanks around it, and where it stands.</summary>
internal readonly record struct CsvCell(string Text, Mark Mark);
