using System.Globalization;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Tests.Propagation;

/// <summary>Rows of Recommendation ITU-R P.2040-3, Table 3, that the tests build walls of, from the reference file.</summary>
internal static class SubstanceTable
{
    private static readonly Dictionary<string, Dielectric> Rows =
        ReferenceTable.Read("p2040-properties-2440mhz.csv").Rows.ToDictionary(row => row.Text("row"), Of);

    public static IReadOnlyCollection<Dielectric> All => Rows.Values;

    public static Surroundings Surroundings { get; } =
        Surroundings.Of(Rows[Surroundings.GroundRow], Rows[Surroundings.TopCeilingRow]);

    public static Dielectric? Named(string name) => name == "air" ? null : Rows[name];

    public static Dielectric Of(ReferenceRow row) => new(row.Number("a"), row.Number("b"), row.Number("c"), row.Number("d"));

    /// <summary>Layers written as <c>plasterboard 12.7 + air 89</c>, millimetres, each with the same tolerance.</summary>
    public static Layer[] Layers(string text, double toleranceMillimetres = 0) =>
    [
        .. text.Split(" + ").Select(part =>
        {
            int gap = part.LastIndexOf(' ');
            double millimetres = double.Parse(part[(gap + 1)..], CultureInfo.InvariantCulture);
            return new Layer(Named(part[..gap]), part[..gap], millimetres / 1000, toleranceMillimetres / 1000);
        }),
    ];
}
