using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Whatever is put in the way of a straight line, it never gains by it.</summary>
public sealed class AnotherObstacleTests
{
    private const int Houses = 200;

    [Fact, Law]
    public void Another_wall_never_raises_a_margin() =>
        Check(from drawn in Gen.Select(RandomHouse.Any, RandomWalls.Of(2.2), Gen.Int[0, 2])
              let level = drawn.Item3 % drawn.Item1.Levels.Count
              select (drawn.Item1, WithWalls(drawn.Item1, level, walls => [.. walls, .. drawn.Item2])));

    [Fact, Law]
    public void A_wall_drawn_twice_counts_once() =>
        (from house in RandomHouse.Any
         from lines in RandomLine.In(house).Array[20]
         let doubled = Enumerable.Range(0, house.Levels.Count).Aggregate(
             house, (changed, level) => WithWalls(changed, level, walls => [.. walls, .. walls.Reverse()]))
         select (house, doubled, lines))
        .ForAll(LineLoss.AreTheSame, cases: Houses);

    [Fact, Law]
    public void Another_fixture_never_raises_a_margin() =>
        Check(from house in RandomHouse.Any
              from fixture in RandomFixture.On(house.Levels.Count)
              select (house, house with { Fixtures = [.. house.Fixtures, fixture] }));

    [Fact, Law]
    public void Shutting_every_door_never_raises_a_margin() =>
        Check(from house in RandomHouse.Any
              select (WithDoors(house, isOpen: true), WithDoors(house, isOpen: false)));

    [Fact, Law]
    public void Closing_every_void_never_raises_a_margin() =>
        Check(from house in RandomHouse.Any
              select (house, house with
              {
                  Levels = [.. house.Levels.Select(level => level with
                  {
                      Above = level.Above is FloorAbove above ? above with { Voids = [] } : null,
                  })],
              }));

    [Fact, Law]
    public void Closing_every_open_side_of_a_shell_never_raises_a_margin() =>
        Check(from house in RandomHouse.Any
              select (house, house with
              {
                  Fixtures = [.. house.Fixtures.Select(fixture => fixture with { OpenSides = BoxSides.None })],
              }));

    private static void Check(Gen<(House Before, House After)> houses) =>
        houses.SelectMany(pair => RandomLine.In(pair.After).Array[20], (pair, lines) => (pair.Before, pair.After, lines))
            .ForAll(
                (before, after, lines) =>
                {
                    Scene sceneBefore = Scene.Compile(before), sceneAfter = Scene.Compile(after);
                    Assert.All(lines, line => Assert.True(
                        LineLoss.Of(sceneAfter, line) >= LineLoss.Of(sceneBefore, line) - LineLoss.SameDb));
                },
                cases: Houses);

    private static House WithWalls(House house, int level, Func<IReadOnlyList<Wall>, Wall[]> change) => house with
    {
        Levels = [.. house.Levels.Select((l, i) => i == level ? l with { Walls = change(l.Walls) } : l)],
    };

    private static House WithDoors(House house, bool isOpen) => Enumerable.Range(0, house.Levels.Count).Aggregate(
        house,
        (changed, level) => WithWalls(changed, level, walls =>
        [
            .. walls.Select(wall => wall with { Openings = [.. wall.Openings.Select(o => o with { IsOpen = isOpen })] }),
        ]));
}
