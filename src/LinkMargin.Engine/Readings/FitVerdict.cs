namespace LinkMargin.Engine.Readings;

/// <summary>What the scatter of the readings says.</summary>
public enum FitVerdict
{
    /// <summary>The readings scatter about the fit as far as they should.</summary>
    Consistent,

    /// <summary>But for a few that look bad they do.</summary>
    SomeReadingsLookWrong,

    /// <summary>They scatter more than the stated noise and the tables allow: the model, or the house as written, looks wrong.</summary>
    ModelLooksWrong,

    /// <summary>They scatter less than readings can: rows copied, or made up, or the noise stated too large.</summary>
    TooGoodToBeTrue,
}
