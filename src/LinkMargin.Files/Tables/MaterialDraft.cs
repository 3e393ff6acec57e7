using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Tables;

/// <summary>A row of the material table as written: the material without its layers and studs, and what they are of.</summary>
internal sealed record MaterialDraft(Material Plain, IReadOnlyList<LayerDraft> Layers, RibsDraft? Studs);
