using System.Globalization;
using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Decisions;

/// <summary>The engine neither reads nor writes a number as text; a machine that writes commas changes nothing.</summary>
public sealed class CultureTests
{
    [Fact, Law]
    public void A_machine_that_writes_commas_gives_the_same_words_and_bits() =>
        RandomHouse.Any.ForAll(
            house =>
            {
                string[] plain = Reported(house);
                CultureInfo before = CultureInfo.CurrentCulture;
                try
                {
                    CultureInfo.CurrentCulture = Commas;
                    Assert.Equal("2,5", $"{2.5}");
                    Assert.Equal(plain, Reported(house));
                }
                finally
                {
                    CultureInfo.CurrentCulture = before;
                }
            },
            cases: 20);

    // As German does; made here because a test host may know no culture but the invariant one.
    private static CultureInfo Commas
    {
        get
        {
            var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            commas.NumberFormat.NumberDecimalSeparator = ",";
            commas.NumberFormat.NumberGroupSeparator = ".";
            commas.NumberFormat.NegativeSign = "−";
            return commas;
        }
    }

    // Every word the engine makes and every bit of what it computes.
    private static string[] Reported(House house)
    {
        var model = new LinkModel(house);
        Ranking ranking = Ranking.Of(model);
        Field field = FieldComputation.Compute(model, new FieldRequest(house.Spots[0], 0) { CellMetres = 1 });
        return
        [
            .. ranking.Scores.SelectMany(s => s.Budgets).SelectMany(b => b.Paths).SelectMany(p => p.Turns).Select(t => t.Name),
            .. ranking.Scores.SelectMany(s => s.Budgets).SelectMany(b => b.Paths).SelectMany(p => p.Path.Crossings).Select(c => c.Name),
            .. ranking.Scores.SelectMany(s => s.Budgets).Select(b => Bits(b.MarginDb)),
            .. field.MarginDb.Select(Bits),
        ];
    }

    private static string Bits(double value) => BitConverter.DoubleToInt64Bits(value).ToString(CultureInfo.InvariantCulture);
}
