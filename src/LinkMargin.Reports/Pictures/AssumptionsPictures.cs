using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Sensitivity;
using LinkMargin.Plots.Charts;
using LinkMargin.Reports.Houses;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>The content of the picture of assumptions; its numbers are those of the table.</summary>
/// <param name="loaded">The house.</param>
/// <param name="study">What was recomputed.</param>
internal sealed class AssumptionsPictures(LoadedHouse loaded, SensitivityStudy study)
{
    private readonly AssumptionWords words = new(loaded.House);

    /// <summary>The picture about one link.</summary>
    public AssumptionsRequest RequestFor(LinkBudget link)
    {
        double marginDb = study.Uncertainty.MarginAtConfidenceDb(link);
        return new(
            $"{MapFindings.Capital(link.Spot.Name)} to {link.Seat.Name}: assumptions behind {Tenths.ShowMargin(marginDb, link.RequiredDb)} dB to count on",
            $"{loaded.House.Name}. {loaded.WhatIfCaption}{FormattableString.Invariant($"Of {study.Considered} assumptions of the house file, those that change this margin most")}, "
                + "each recomputed with the full model. Planning estimates.",
            "margin to count on (dB)",
            marginDb,
            link.RequiredDb,
            [.. study.Effects.Select(effect => RowOf(effect, effect.SpreadDb(link), one => one.MarginDb(link)))]);
    }

    /// <summary>The picture about the decision: the weakest seat of the best spot.</summary>
    public AssumptionsRequest RequestForDecision()
    {
        SpotScore best = study.Ranking.Scores[0];
        return new(
            "",
            "",
            $"weakest seat of {best.Spot.Name}: margin to count on above (+) or below (−) the required margin (dB)",
            best.WeakestHeadroomDb,
            0,
            [.. study.Effects.Select(effect => RowOf(effect, effect.SpreadDb(best.Weakest), one => one.ScoreOf(best.Spot.Name).WeakestHeadroomDb))]);
    }

    private AssumptionRow RowOf(UnknownEffect effect, double spreadDb, Func<AlternativeEffect, double> marginDb) => new(
        words.Heading(effect.Unknown),
        effect.Unknown.Kind == UnknownKind.DoorState ? $"described as {effect.Unknown.Assumed}" : AssumptionWords.Described(loaded.Tables, effect.Unknown.Kind, effect.Unknown.Assumed),
        effect.Unknown.Kind == UnknownKind.DoorState ? 0 : spreadDb,
        [.. effect.Alternatives.Select(one => new AssumptionEnd(AssumptionWords.Instead(loaded.Tables, effect.Unknown.Kind, effect.Unknown.Assumed, one.Alternative.Row), marginDb(one), one.OtherBest(study.Ranking) is { } other ? $"best: {other.Spot.Name}" : ""))]);
}
