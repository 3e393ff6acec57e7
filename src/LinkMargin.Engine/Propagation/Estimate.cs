namespace LinkMargin.Engine.Propagation;

/// <summary>
/// A value of a published method, and a caution where the method is used outside the range it was published for. What a
/// method cannot compute at all is refused with an exception and never becomes an estimate.
/// </summary>
/// <typeparam name="T">Type of the value.</typeparam>
/// <param name="Value">The value, computed either way.</param>
/// <param name="Caution">One sentence that says which limit was passed; null inside the range.</param>
public readonly record struct Estimate<T>(T Value, string? Caution)
{
    /// <summary>Whether the method was published for the values it was given.</summary>
    public bool IsComfortable => Caution is null;
}
