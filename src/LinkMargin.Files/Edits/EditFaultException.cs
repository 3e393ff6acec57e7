namespace LinkMargin.Files.Edits;

/// <summary>What somebody wrote as an edit cannot be one; says why and what to write, without the edit itself.</summary>
public sealed class EditFaultException(string message) : Exception(message);
