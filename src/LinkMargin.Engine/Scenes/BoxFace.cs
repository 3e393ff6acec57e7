using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Scenes;

/// <summary>One side of a box and its corners in order.</summary>
internal sealed record BoxFace(BoxSides Side, Point3[] Outline);
