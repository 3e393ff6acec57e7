namespace LinkMargin.Engine.Tests.Propagation.Comparison;

public sealed class ComparisonModelTests
{
    [Fact]
    public void The_classic_indoor_form_matches_a_published_test_value_and_worked_ones() =>
        Assert.All(ReferenceTable.Read("p1238-classic.csv").Rows, row =>
        {
            double lossDb = IndoorModel.ClassicLossDb(
                row.Number("frequency_mhz"), row.Number("distance_m"), row.Number("floor_loss_db"));
            row.AssertPrinted("loss_db", lossDb);
        });

    [Fact]
    public void The_site_general_indoor_form_matches_worked_values() =>
        Assert.All(ReferenceTable.Read("p1238-site-general.csv").Rows, row =>
        {
            double lossDb = IndoorModel.SiteGeneralLossDb(2.44, 10, row.Number("alpha"), row.Number("beta"), row.Number("gamma"));
            row.AssertPrinted("loss_db", lossDb);
            Assert.InRange(10, row.Number("least_m"), row.Number("greatest_m"));
        });

    [Fact]
    public void The_multi_wall_model_matches_worked_values() =>
        Assert.All(ReferenceTable.Read("cost231-multi-wall.csv").Rows, row => row.AssertPrinted(
            "added_db",
            MultiWallModel.AddedDb((int)row.Number("light_walls"), (int)row.Number("heavy_walls"), (int)row.Number("floors"))));

    [Fact]
    public void The_material_penetration_losses_match_worked_values() =>
        Assert.All(ReferenceTable.Read("tr38901-material-losses.csv").Rows, row => row.AssertPrinted(
            "loss_db",
            MaterialPenetration.LossDb(row.Number("offset_db"), row.Number("slope_db_per_ghz"), 2.44)));
}
