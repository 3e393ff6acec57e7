namespace LinkMargin.Plots.Labels;

/// <summary>The candidate places for a label, all inside a frame.</summary>
internal sealed class LabelCandidates(LabelBox frame)
{
    private const int PlacesOnRing = 16;
    private static readonly double[] RingsInHeights = [0.25, 1.0, 1.9, 3.0, 4.4, 6.0];
    private static readonly double[] SlidesInWidths = [0.12, 0.24, 0.36, -0.12, -0.24, -0.36];

    /// <summary>On rings around the mark, nearest first.</summary>
    public IEnumerable<LabelBox> Around(LabelRequest r)
    {
        foreach (double ring in RingsInHeights)
        {
            double away = r.MarkRadius + (ring * r.Height);
            for (int i = 0; i < PlacesOnRing; i++)
            {
                double angle = 2 * Math.PI * i / PlacesOnRing;
                double cosine = Math.Cos(angle), sine = Math.Sin(angle);

                // The box touches the ring from outside, on the side where it is.
                double x = r.X + (cosine * away) + (Math.Round(cosine, 6) switch { 0 => 0, > 0 => 0.5, _ => -0.5 } * r.Width);
                double y = r.Y + (sine * away) + (Math.Clamp(1.5 * sine, -1, 1) * 0.5 * r.Height);
                yield return Inside(LabelBox.Around(x, y, r.Width / 2, r.Height / 2));
            }

            // Above and below, a long label can also have its mark near one of its ends.
            foreach (double slide in SlidesInWidths)
            {
                foreach (double side in new[] { -1, 1 })
                {
                    double y = r.Y + (side * (away + (r.Height / 2)));
                    yield return Inside(LabelBox.Around(r.X + (slide * r.Width), y, r.Width / 2, r.Height / 2));
                }
            }
        }
    }

    /// <summary>Everywhere in the frame.</summary>
    public IEnumerable<LabelBox> Everywhere(LabelRequest r)
    {
        double step = r.Height / 3;
        for (double top = frame.Top; top + r.Height <= frame.Bottom; top += step)
        {
            for (double left = frame.Left; left + r.Width <= frame.Right; left += step)
            {
                yield return new(left, top, left + r.Width, top + r.Height);
            }
        }
    }

    // A box moved in from a side ends exactly on that side; adding and subtracting an offset could leave it slightly outside.
    private LabelBox Inside(LabelBox box)
    {
        (double left, double right) = Inside(box.Left, box.Right, frame.Left, frame.Right);
        (double top, double bottom) = Inside(box.Top, box.Bottom, frame.Top, frame.Bottom);
        return new(left, top, right, bottom);
    }

    private static (double From, double To) Inside(double from, double to, double least, double greatest) =>
        from < least ? (least, least + (to - from)) : to > greatest ? (greatest - (to - from), greatest) : (from, to);
}
