using LinkMargin.Engine.Paths;

namespace LinkMargin.Engine.Links.Stored;

/// <summary>Records one link's paths and their slopes. Each material can be shifted everywhere, and in each place alone.</summary>
internal sealed class GradientRecorder(ParameterList parameters) : IGradientRecorder
{
    private readonly List<double> power = [];
    private readonly List<int> first = [];
    private readonly List<int> parameter = [];
    private readonly List<double> slopes = [];

    /// <inheritdoc/>
    public void Begin(double pathPower)
    {
        power.Add(pathPower);
        first.Add(parameter.Count);
    }

    /// <inheritdoc/>
    public void Add(int material, int? place, double slope)
    {
        if (slope == 0)
        {
            return;
        }

        foreach (int part in parameters.PartsOf(material))
        {
            AddTo(part, slope);
            if (place is int somewhere)
            {
                AddTo(parameters.At(part, somewhere), slope);
            }
        }
    }

    /// <summary>The link, as recorded so far.</summary>
    internal StoredLink ToLink() => new([.. power], [.. first, parameter.Count], [.. parameter], [.. slopes]);

    private void AddTo(int number, double slope)
    {
        int at = parameter.IndexOf(number, first[^1]);
        if (at >= 0)
        {
            slopes[at] += slope;
        }
        else
        {
            parameter.Add(number);
            slopes.Add(slope);
        }
    }
}

/// <summary>Keeps one link's paths and slopes as they come, to pass them on later.</summary>
internal sealed class KeptGradients : IGradientRecorder
{
    private readonly List<double> powers = [];
    private readonly List<int> first = [];
    private readonly List<(int Material, int? Place, double Slope)> slopes = [];

    /// <inheritdoc/>
    public void Begin(double pathPower)
    {
        powers.Add(pathPower);
        first.Add(slopes.Count);
    }

    /// <inheritdoc/>
    public void Add(int material, int? place, double slope) => slopes.Add((material, place, slope));

    /// <summary>Passes everything on, in the order it came.</summary>
    internal void GiveTo(IGradientRecorder other)
    {
        for (int path = 0; path < powers.Count; path++)
        {
            other.Begin(powers[path]);
            int end = path + 1 < powers.Count ? first[path + 1] : slopes.Count;
            for (int i = first[path]; i < end; i++)
            {
                other.Add(slopes[i].Material, slopes[i].Place, slopes[i].Slope);
            }
        }
    }
}
