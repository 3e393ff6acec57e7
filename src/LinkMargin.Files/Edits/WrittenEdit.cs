using LinkMargin.Engine.Decisions.Edits;

namespace LinkMargin.Files.Edits;

/// <summary>An edit as somebody wrote it.</summary>
/// <param name="Text">What was written, without needless blanks.</param>
/// <param name="Edit">What it does.</param>
/// <param name="Warning">What looks odd about it; null where nothing does.</param>
public sealed record WrittenEdit(string Text, HouseEdit Edit, string? Warning);
