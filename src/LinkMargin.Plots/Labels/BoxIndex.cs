namespace LinkMargin.Plots.Labels;

/// <summary>
/// Boxes by place, so that a crowded plan asks only about what lies near. Boxes that cover many cells go to a coarser
/// grid; answers come in the order in which boxes were added.
/// </summary>
internal sealed class BoxIndex
{
    private const double CellPixels = 48;
    private const double Coarser = 8;
    private const int Grids = 4;

    // A wall across a picture covers some dozens of the finest cells.
    private const int MostCells = 64;

    private readonly List<LabelBox> boxes = [];
    private readonly List<int> lastQuery = [];
    private readonly Dictionary<(int X, int Y), List<int>>[] grids = [.. Enumerable.Range(0, Grids).Select(_ => new Dictionary<(int, int), List<int>>())];
    private readonly List<int> found = [];
    private int query;

    /// <summary>An index of some boxes, to which others can be added.</summary>
    public BoxIndex(IEnumerable<LabelBox> boxes)
    {
        foreach (LabelBox box in boxes)
        {
            Add(box);
        }
    }

    /// <summary>How many boxes were looked at so far: what the work grows with.</summary>
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
                if (!grids[grid].TryGetValue((x, y), out List<int>? cell))
                {
                    grids[grid][(x, y)] = cell = [];
                }

                cell.Add(boxes.Count);
            }
        }

        boxes.Add(box);
        lastQuery.Add(0);
    }

    /// <summary>Whether some box overlaps the one given.</summary>
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
                    if (grids[grid].TryGetValue((x, y), out List<int>? cell))
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

    /// <summary>The numbers of all boxes that may touch the one given; valid until the next question.</summary>
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

    /// <summary>The box of a number.</summary>
    public LabelBox this[int number] => boxes[number];

    private void Gather(LabelBox box, int grid)
    {
        (int left, int top, int right, int bottom, long count) = Cells(box, grid);
        if (count > grids[grid].Count)
        {
            foreach (((int x, int y), List<int> cell) in grids[grid])
            {
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
                if (grids[grid].TryGetValue((x, y), out List<int>? cell))
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
        double size = CellPixels * Math.Pow(Coarser, grid);
        int left = Cell(box.Left / size), top = Cell(box.Top / size), right = Cell(box.Right / size), bottom = Cell(box.Bottom / size);
        return (left, top, right, bottom, (right - left + 1L) * (bottom - top + 1L));
    }

    // Far beyond every picture; so that no box, however large, has more cells than can be walked through.
    private static int Cell(double place) => (int)Math.Clamp(Math.Floor(place), -2000, 2000);
}
