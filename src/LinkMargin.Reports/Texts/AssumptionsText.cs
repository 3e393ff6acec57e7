using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Texts;

/// <summary>Writes which assumptions of the house file a margin depends on.</summary>
/// <param name="house">The house.</param>
/// <param name="study">What was recomputed.</param>
internal sealed class AssumptionsText(House house, SensitivityStudy study)
{
    private readonly AssumptionWords words = new(house);

    /// <summary>Writes the section about a link.</summary>
    public void Write(LinkBudget link, TextWriter output, int width)
    {
        if (study.Effects.Count == 0)
        {
            WordWrap.Write(FormattableString.Invariant($"None of {study.Considered} assumptions changes this margin by 0.1 dB or more."), output, width);
            return;
        }

        WordWrap.Write(
            FormattableString.Invariant($"Assumptions of the house file that change this margin most, of {study.Considered} examined; each row is recomputed with the full model"),
            output,
            width);
        output.WriteLine();
        TableOf(link).WriteTo(output, width);
        WordWrap.Write(
            "change: of the margin to count on, if this is true instead; '!' = then below the required margin. ±: change of the median margin by one standard deviation of "
                + "the losses as described. Alternatives are rows of the same kind and about the same thickness.",
            output,
            width);
        foreach (string sentence in Decisions())
        {
            WordWrap.Write(sentence, output, width);
        }
    }

    private TextTable TableOf(LinkBudget link)
    {
        long before = Tenths.OfMargin(study.Uncertainty.MarginAtConfidenceDb(link));
        var table = new TextTable(
        [
            new Column("assumption") { Wraps = true },
            new Column("described as") { Wraps = true },
            new Column("±, dB", Align.Right),
            new Column("if instead") { Wraps = true },
            new Column("change,\ndB", Align.Right),
            new Column("margin\nthen, dB", Align.Right),
        ]);
        foreach (UnknownEffect effect in study.Effects)
        {
            bool isFirst = true;
            foreach (AlternativeEffect one in effect.Alternatives)
            {
                double then = one.MarginDb(link);
                table.Add(
                    isFirst ? words.Subject(effect.Unknown) : "",
                    isFirst ? effect.Unknown.Assumed : "",
                    isFirst && effect.Unknown.Kind != UnknownKind.DoorState ? Tenths.Show(effect.SpreadDb(link)) : "",
                    one.Alternative.Row,
                    Tenths.Signed(Tenths.OfMargin(then) - before),
                    (then >= link.RequiredDb ? "" : "! ") + Tenths.ShowMargin(then, link.RequiredDb));
                isFirst = false;
            }
        }

        return table;
    }

    // Effects on the decision, which depends on all links and not only on this one.
    private IEnumerable<string> Decisions() =>
        from effect in study.Effects
        from one in effect.Alternatives
        let best = one.OtherBest(study.Ranking)
        where best is not null
        select $"If {words.Subject(effect.Unknown)} is {one.Alternative.Row}, '{best.Spot.Name}' is the best spot instead of '{study.Ranking.Scores[0].Spot.Name}'.";
}
