using System.Globalization;

namespace LinkMargin.Engine.Tests;

/// <summary>One file of <c>tests/reference</c>: comment lines that say where it is from, a line of column names, rows.</summary>
public sealed class ReferenceTable
{
    private ReferenceTable(IReadOnlyList<ReferenceRow> rows) => Rows = rows;

    public IReadOnlyList<ReferenceRow> Rows { get; }

    public static ReferenceTable Read(string fileName)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "reference", fileName);
        string[] lines = [.. File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#')];
        string[] names = lines[0].Split(',');
        ReferenceRow[] rows = [.. lines.Skip(1).Select(line => new ReferenceRow(names, line.Split(',')))];
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Equal(names.Length, row.Count));
        return new ReferenceTable(rows);
    }
}

/// <summary>One row, by column name.</summary>
public sealed class ReferenceRow(string[] names, string[] cells)
{
    public int Count => cells.Length;

    public string Text(string name) => cells[Array.IndexOf(names, name)];

    public double Number(string name) => double.Parse(Text(name), NumberStyles.Float, CultureInfo.InvariantCulture);

    public bool Has(string name) => Text(name).Length > 0;

    /// <summary>Within half a unit of the last decimal place that is printed.</summary>
    public void AssertPrinted(string name, double actual)
    {
        string text = Text(name);
        int point = text.IndexOf('.', StringComparison.Ordinal);
        int decimals = point < 0 ? 0 : text.Length - point - 1;
        AssertWithin(name, actual, 0.5 * Math.Pow(10, -decimals));
    }

    /// <summary>Within half a unit of a significant digit, for tables that drop trailing zeros.</summary>
    public void AssertPrinted(string name, double actual, int significantDigits)
    {
        double expected = Number(name);
        double unit = expected == 0 ? 0 : Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(expected))) - significantDigits + 1);
        AssertWithin(name, actual, 0.5 * unit);
    }

    public override string ToString() => string.Join(',', cells);

    private void AssertWithin(string name, double actual, double tolerance)
    {
        // The last bit of slack is for decimals that a double cannot hold.
        double expected = Number(name), slack = tolerance + (Math.Abs(expected) * 1e-12);
        Assert.True(Math.Abs(actual - expected) <= slack, $"{name} of [{this}]: printed {expected:G9}, computed {actual:G9}.");
    }
}
