using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Printing;

namespace LinkMargin.Reports.Documents;

/// <summary>The content of a report, in order, before it is laid out. Two writers turn it into HTML and PDF.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Sections">Its sections.</param>
internal sealed record ReportDocument(string Title, IReadOnlyList<ReportSection> Sections) : IDisposable
{
    /// <summary>Lines below the title: for whom and by whom.</summary>
    public IReadOnlyList<string> Below { get; init; } = [];

    /// <summary>Its author; empty for none.</summary>
    public string Author { get; init; } = "";

    /// <summary>The user's own picture above the title; null for none.</summary>
    public PhotoPicture? Logo { get; init; }

    /// <summary>The footer of every printed page.</summary>
    public string Foot { get; init; } = "";

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (PictureBlock block in Sections.SelectMany(section => section.Blocks).OfType<PictureBlock>())
        {
            block.Picture.Dispose();
        }

        Logo?.Dispose();
    }
}

/// <summary>One section.</summary>
/// <param name="Id">Its anchor, one word.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">Its content.</param>
internal sealed record ReportSection(string Id, string Heading, IReadOnlyList<ReportBlock> Blocks)
{
    /// <summary>Whether it starts a new printed page.</summary>
    public bool BeginsPage { get; init; }
}

/// <summary>A part of a section.</summary>
internal abstract record ReportBlock;

/// <summary>Running text.</summary>
/// <param name="Text">The text.</param>
/// <param name="Weight">Its prominence.</param>
internal sealed record ParagraphBlock(string Text, TextWeight Weight = TextWeight.Usual) : ReportBlock;

/// <summary>The prominence of a paragraph.</summary>
internal enum TextWeight
{
    /// <summary>Normal text.</summary>
    Usual,

    /// <summary>The most important sentence.</summary>
    Lead,

    /// <summary>A note.</summary>
    Small,

    /// <summary>A heading within a section.</summary>
    Heading,
}

/// <summary>A list.</summary>
/// <param name="Items">Its items.</param>
/// <param name="IsNumbered">Whether they are numbered.</param>
internal sealed record ListBlock(IReadOnlyList<ListItem> Items, bool IsNumbered = false) : ReportBlock;

/// <summary>An item of a list.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Detail">A note below it; empty for none.</param>
internal sealed record ListItem(string Text, string Detail = "");

/// <summary>A table.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, with as many cells as there are columns.</param>
internal sealed record TableBlock(IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<TableCell>> Rows) : ReportBlock
{
    /// <summary>Whether it is set small, like a table of numbers for an engineer.</summary>
    public bool IsSmall { get; init; }
}

/// <summary>A column.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Share">Its share of the width on paper, above 0; shares need not add up to 1.</param>
/// <param name="IsFigures">Whether its cells are aligned right.</param>
internal sealed record TableColumn(string Heading, double Share, bool IsFigures = false);

/// <summary>A cell.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Detail">A smaller line below it; empty for none.</param>
internal sealed record TableCell(string Text, string Detail = "")
{
    /// <summary>Whether it is bold.</summary>
    public bool IsBold { get; init; }

    /// <summary>Whether it is set as small as the line below.</summary>
    public bool IsSmall { get; init; }

    /// <summary>A tick or a cross before it; null for neither.</summary>
    public bool? Passes { get; init; }

    /// <summary>Converts plain text, which most cells are.</summary>
    public static implicit operator TableCell(string text) => new(text);
}

/// <summary>A picture.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="Description">What it shows, for readers who cannot see it.</param>
/// <param name="Caption">A sentence below it; empty for none.</param>
internal sealed record PictureBlock(VectorPicture Picture, string Description, string Caption) : ReportBlock;

/// <summary>A map to explore; only on screen.</summary>
/// <param name="Map">The map.</param>
internal sealed record ExploreBlock(ExploreMap Map) : ReportBlock;

/// <summary>Lines to sign on.</summary>
/// <param name="Lines">The purpose of each.</param>
internal sealed record SignatureBlock(IReadOnlyList<string> Lines) : ReportBlock;
