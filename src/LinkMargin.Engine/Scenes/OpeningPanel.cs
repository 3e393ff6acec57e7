namespace LinkMargin.Engine.Scenes;

/// <summary>An opening in a wall: from and to along it, heights over the lowest floor, what fills it (-1: nothing).</summary>
internal readonly record struct OpeningPanel(double From, double To, double Low, double High, int Filling, int Name)
{
    /// <summary>Whether a place on the wall lies in the opening, grown by a margin all round, metres.</summary>
    internal bool Reaches(double along, double height, double marginMetres) =>
        along >= From - marginMetres && along <= To + marginMetres
        && height >= Low - marginMetres && height <= High + marginMetres;
}
