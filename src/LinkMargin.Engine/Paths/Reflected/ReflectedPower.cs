using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Paths.Reflected;

/// <summary>What a reflection brings past the obstacles on both its legs.</summary>
internal sealed class ReflectedPower(TracedHouse house)
{
    /// <summary>Its power; 0 where that is no more than the least that counts. Afterwards the buffer holds its pieces.</summary>
    internal double Of(in Reflection reflection, in LinkEnds ends, TraceBuffer buffer, double leastPower, in FrontReach reach)
    {
        // No front passes more than free space does, so a path that is too weak without obstacles is too weak with them.
        double power = house.FreeSpaceRatio(reflection.LengthMetres) * reflection.PowerRatio * BodyFactor(house, reflection, ends);
        if (power <= leastPower)
        {
            return 0;
        }

        Ray there = reflection.There(ends.Start, house.WavelengthMetres, reach), on = reflection.On(ends.End, house.WavelengthMetres, reach);
        house.Scene.GatherFoldedLevels(there, on, reflection.Fold, buffer);
        if (power * FrontSum.MostPowerRatio(buffer.Pieces, house.Losses, reach) <= leastPower)
        {
            return 0; // the loss of floors alone is too much
        }

        house.Scene.GatherFoldedUprights(there, on, reflection.Fold, buffer);
        return power * FrontSum.PowerRatio(buffer.Pieces, house.Losses, reach, leastPower / power);
    }

    /// <summary>Share of its power that the player's own body leaves.</summary>
    internal static double BodyFactor(TracedHouse house, in Reflection reflection, in LinkEnds ends) =>
        ends.BodyFactor(house.Body, reflection.ImageOfEnd, reflection.Image);
}
