namespace LinkMargin.Engine.Links.Stored;

/// <summary>Takes down one link's paths and their slopes. Materials are shifted everywhere, and in each place by themselves.</summary>
internal sealed class GradientRecorder(ParameterList parameters)
{
    private readonly List<double> power = [];
    private readonly List<int> first = [];
    private readonly List<int> parameter = [];
    private readonly List<double> slope = [];

    /// <summary>Starts another path.</summary>
    internal void Begin(double pathPower)
    {
        power.Add(pathPower);
        first.Add(parameter.Count);
    }

    /// <summary>Adds to the path's slope by a material's loss.</summary>
    /// <param name="material">The material, by number. A whole floor stands for each of its layers.</param>
    /// <param name="place">Where; null where it is met in no one place.</param>
    /// <param name="value">dB for each dB.</param>
    internal void Add(int material, int? place, double value)
    {
        if (value == 0)
        {
            return;
        }

        foreach (int part in parameters.PartsOf(material))
        {
            AddTo(part, value);
            if (place is int somewhere)
            {
                AddTo(parameters.At(part, somewhere), value);
            }
        }
    }

    /// <summary>The link.</summary>
    internal StoredLink Close() => new([.. power], [.. first, parameter.Count], [.. parameter], [.. slope]);

    private void AddTo(int number, double value)
    {
        int at = parameter.IndexOf(number, first[^1]);
        if (at >= 0)
        {
            slope[at] += value;
        }
        else
        {
            parameter.Add(number);
            slope.Add(value);
        }
    }
}
