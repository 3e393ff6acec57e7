namespace LinkMargin.Plots.Labels;

/// <summary>
/// A spatial index of boxes, so that a crowded plan only checks nearby ones. Boxes that cover many cells go to a coarser
/// grid; results come in the order in which boxes were added.
/// </summary>
internal sealed class BoxIndex
{
    private const double CellPixels = 48;
    private const int Grids = 4;

    // Limits are far outside every picture; they keep a huge box from covering too many cells.
    private const int MostCell = 2000;
    private const int CellsInRow = (2 * MostCell) + 1;

    // A wall across a picture covers some dozens of the smallest cells.
    private const int MostCells = 64;

    private static readonly double[] CoarserBy = [1, 8, 64, 512];

    private readonly List<LabelBox> boxes = [];
    private readonly List<int> lastQuery = [];
    private readonly Dictionary<int, List<int>>[] grids = [.. Enumerable.Range(0, Grids).Select(_ => new Dictionary<int, List<int>>())];
    private readonly List<int> found = [];
    private int query;

    /// <summary>An index of some boxes; more can be added.</summary>
    public BoxIndex(IEnumerable<LabelBox> boxes)
    {
        foreach (LabelBox box in boxes)
        {
            Add(box);
        }
    }

    /// <summary>How many boxes were checked so far, as a measure of work.</summary>
    public long Looks { get; private set; }

    public void Add(LabelBox box)
    {
        int grid = 0;
        while (grid < Grids - 1 && Cells(box, grid).Count > MostCells)
        {
            grid++;
        }

        (int left, int top, int right, int bottom, _) = Cells(box, grid);
        for (int x = left; x <= right; x++)
        {
            for (int y = top; y <= bottom; y++)
            {
                if (!grids[grid].TryGetValue(Key(x, y), out List<int>? cell))
                {
                    grids[grid][Key(x, y)] = cell = [];
                }

                cell.Add(boxes.Count);
            }
        }

        boxes.Add(box);
        lastQuery.Add(0);
    }

    /// <summary>Whether any box overlaps the given one.</summary>
    public bool Overlaps(LabelBox box)
    {
        for (int grid = 0; grid < Grids; grid++)
        {
            if (grids[grid].Count == 0)
            {
                continue;
            }

            (int left, int top, int right, int bottom, _) = Cells(box, grid);
            for (int x = left; x <= right; x++)
            {
                for (int y = top; y <= bottom; y++)
                {
                    if (grids[grid].TryGetValue(Key(x, y), out List<int>? cell))
                    {
                        foreach (int i in cell)
                        {
                            Looks++;
                            if (box.Overlaps(boxes[i]))
                            {
                                return true;
                            }
                        }
                    }
                }
            }
        }

        return false;
    }

    /// <summary>The numbers of all boxes that may touch the given one; valid until the next query.</summary>
    public List<int> Near(LabelBox box)
    {
        found.Clear();
        query++;
        for (int grid = 0; grid < Grids; grid++)
        {
            if (grids[grid].Count > 0)
            {
                Gather(box, grid);
            }
        }

        found.Sort();
        Looks += found.Count;
        return found;
    }

    /// <summary>The box with a number.</summary>
    public LabelBox this[int number] => boxes[number];

    private void Gather(LabelBox box, int grid)
    {
        (int left, int top, int right, int bottom, long count) = Cells(box, grid);
        if (count > grids[grid].Count)
        {
            foreach ((int key, List<int> cell) in grids[grid])
            {
                (int x, int y) = ((key % CellsInRow) - MostCell, (key / CellsInRow) - MostCell);
                if (x >= left && x <= right && y >= top && y <= bottom)
                {
                    Take(cell);
                }
            }

            return;
        }

        for (int x = left; x <= right; x++)
        {
            for (int y = top; y <= bottom; y++)
            {
                if (grids[grid].TryGetValue(Key(x, y), out List<int>? cell))
                {
                    Take(cell);
                }
            }
        }
    }

    private void Take(List<int> cell)
    {
        foreach (int i in cell)
        {
            if (lastQuery[i] != query)
            {
                lastQuery[i] = query;
                found.Add(i);
            }
        }
    }

    private static (int Left, int Top, int Right, int Bottom, long Count) Cells(LabelBox box, int grid)
    {
        double size = CellPixels * CoarserBy[grid];
        int left = Cell(box.Left / size), top = Cell(box.Top / size), right = Cell(box.Right / size), bottom = Cell(box.Bottom / size);
        return (left, top, right, bottom, (right - left + 1L) * (bottom - top + 1L));
    }

    private static int Cell(double place) => (int)Math.Clamp(Math.Floor(place), -MostCell, MostCell);

    private static int Key(int x, int y) => ((y + MostCell) * CellsInRow) + x + MostCell;
}
