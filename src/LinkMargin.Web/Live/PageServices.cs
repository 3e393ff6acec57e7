using LinkMargin.Engine.Fields;
using LinkMargin.Reports.Houses;
using LinkMargin.Web.Answers;
using LinkMargin.Web.Drawing;
using LinkMargin.Web.Houses;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Live;

/// <summary>Services shared by all pages of one house.</summary>
internal sealed class PageServices
{
    private readonly Lock gate = new();
    private ScaleMessage? scale;

    /// <summary>Makes the services.</summary>
    /// <param name="tried">The house.</param>
    /// <param name="confidence">Share of cases in which the margin to count on is reached, above 0 and below 1.</param>
    /// <param name="fields">Computes fields; null for the default.</param>
    public PageServices(TriedHouse tried, double confidence, ISpotFields? fields = null)
    {
        (Tried, Confidence) = (tried, confidence);
        Models = new Models();
        var inFile = new FileFigures(Models, confidence);
        Figures = new SeatFigures(Models, inFile, confidence);
        Comparisons = new Comparisons(Models, inFile, confidence);
        Cables = new CableCosts(Comparisons);
        Fields = fields ?? new StagedSpotFields(tried.Current.Now.Uncertainty, confidence);
        Jobs = new Jobs(tried, Models, confidence);
    }

    public TriedHouse Tried { get; }

    public double Confidence { get; }

    public Models Models { get; }

    public SeatFigures Figures { get; }

    public Comparisons Comparisons { get; }

    public CableCosts Cables { get; }

    public ISpotFields Fields { get; }

    public Jobs Jobs { get; }

    /// <summary>The common colour scale: that of the first fields requested.</summary>
    public ScaleMessage ScaleFor(IEnumerable<Field> first)
    {
        lock (gate)
        {
            return scale ??= Legend.For(first, RequiredMargin.OfMost(Tried.Current.InFile.House));
        }
    }
}
