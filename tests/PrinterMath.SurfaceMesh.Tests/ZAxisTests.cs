using UnitsNet;

namespace PrinterMath.SurfaceMesh.Tests;

public sealed class ZAxisTests
{
    private static readonly ZAxisLimits Slow = new()
    {
        MaximumSpeed = Speed.FromMillimetersPerSecond(5),
        MaximumAcceleration = Acceleration.FromMillimetersPerSecondSquared(50),
    };

    // 10 µm up over 100 mm and down again: slope 1e-4, step 2e-4 over 100 mm. At 200 mm/s: 0.02 mm/s, 0.04 mm/s, 200²·2e-4/100 = 0.08 mm/s².
    [Fact]
    public void Demand_by_hand()
    {
        FollowedMove move = Roof();
        Assert.Equal(-2e-4, Assert.Single(move.SlopeSteps), 1e-15);
        Assert.Equal((1e-4, 2e-4), (Math.Round(move.SteepestSlope, 12), Math.Round(move.LargestSlopeStep, 12)));
        ZAxisDemand demand = move.DemandAt(Speed.FromMillimetersPerSecond(200));
        Assert.Equal(0.02, demand.Speed.MillimetersPerSecond, 1e-12);
        Assert.Equal(0.04, demand.SpeedStep.MillimetersPerSecond, 1e-12);
        Assert.Equal(0.08, demand.Acceleration.MillimetersPerSecondSquared, 1e-12);
        Assert.Equal("at 200 mm/s: Z moves at up to 0.02 mm/s, with 0.08 mm/s² and steps of 0.04 mm/s", demand.ToString());

        // 3000 mm/s² along the move add 0.3 mm/s².
        Assert.Equal(0.38, move.DemandAt(Speed.FromMillimetersPerSecond(200), Acceleration.FromMillimetersPerSecondSquared(3000)).Acceleration.MillimetersPerSecondSquared, 1e-12);
        Assert.Empty(demand.Exceeded(Slow));
        Assert.Equal(
            [ZAxisLimitKind.Speed, ZAxisLimitKind.Acceleration, ZAxisLimitKind.SpeedStep],
            demand.Exceeded(new ZAxisLimits
            {
                MaximumSpeed = Speed.FromMillimetersPerSecond(0.019),
                MaximumAcceleration = Acceleration.FromMillimetersPerSecondSquared(0.07),
                MaximumSpeedStep = Speed.FromMillimetersPerSecond(0.03),
            }));
    }

    // 5 mm/s over 1e-4; √(50·100/2e-4) = 5000 mm/s; with 1e5 mm/s² along, 40 mm/s² are left: √(40·100/2e-4) = 4472.1; a step of 0.1 mm/s: 500 mm/s.
    [Fact]
    public void Feed_limit_by_hand()
    {
        FeedLimit limit = Roof().LargestFeed(Slow);
        Assert.Equal((ZAxisLimitKind.Acceleration, 0), (limit.LimitedBy, limit.Segment));
        Assert.Equal(5000, limit.Feed!.Value.MillimetersPerSecond, 1e-6);
        Assert.Equal("5000 mm/s, limited by the Z axis's Acceleration at piece 0", limit.ToString());
        Assert.Equal(4472.136, Roof().LargestFeed(Slow, Acceleration.FromMillimetersPerSecondSquared(1e5)).Feed!.Value.MillimetersPerSecond, 1e-3);
        Assert.Equal(0, Roof().LargestFeed(Slow, Acceleration.FromMillimetersPerSecondSquared(1e6)).Feed!.Value.MillimetersPerSecond);
        FeedLimit stepped = Roof().LargestFeed(Slow with { MaximumSpeedStep = Speed.FromMillimetersPerSecond(0.1) });
        Assert.Equal(ZAxisLimitKind.SpeedStep, stepped.LimitedBy);
        Assert.Equal(500, stepped.Feed!.Value.MillimetersPerSecond, 1e-9);
        FeedLimit quick = Roof().LargestFeed(Slow with { MaximumAcceleration = Acceleration.FromMetersPerSecondSquared(100) });
        Assert.Equal(ZAxisLimitKind.Speed, quick.LimitedBy);
        Assert.Equal(50_000, quick.Feed!.Value.MillimetersPerSecond, 1e-6);
    }

    [Fact]
    public void A_level_move_is_not_limited()
    {
        FollowedMove level = BilinearModel.Through(ProbedGrid.FromHeights([0, 1], [0, 1], [1, 1, 1, 1])).Follow(default, SurfacePosition.FromMeters(1, 1), Length.FromMicrometers(1));
        FeedLimit limit = level.LargestFeed(Slow, Acceleration.FromMetersPerSecondSquared(10));
        Assert.False(limit.IsLimited);
        Assert.Null(limit.Feed);
        Assert.Null(limit.LimitedBy);
        Assert.Equal("not limited by the Z axis", limit.ToString());
        Assert.Equal(0, level.LargestSlopeStep);
    }

    // At the largest feed nothing is exceeded, and a hair above it the named limit is.
    [Theory]
    [InlineData("waves", 5, 100, 0, null)]
    [InlineData("ridge", 1, 1000, 2000, null)]
    [InlineData("ridge", 0.2, 1000, 500, null)]
    [InlineData("dent", 5, 50, 1000, 0.05)]
    [InlineData("saddle", 0.1, 1000, 0, 1.0)]
    public void The_largest_feed_is_just_within(string kind, double speed, double acceleration, double along, double? step)
    {
        IHeightModel model = BicubicModel.Through(ProbedGrid.FromPoints(new SurfaceSimulator(1).Probe(kind, 11, 11, 0)));
        FollowedMove move = model.Follow(SurfacePosition.FromMeters(0.01, 0.03), SurfacePosition.FromMeters(0.28, 0.21), Length.FromMicrometers(2));
        var limits = new ZAxisLimits
        {
            MaximumSpeed = Speed.FromMillimetersPerSecond(speed),
            MaximumAcceleration = Acceleration.FromMillimetersPerSecondSquared(acceleration),
            MaximumSpeedStep = step is { } s ? Speed.FromMillimetersPerSecond(s) : null,
        };
        Acceleration a = Acceleration.FromMillimetersPerSecondSquared(along);
        FeedLimit limit = move.LargestFeed(limits, a);
        Assert.Empty(move.DemandAt(limit.Feed!.Value * (1 - 1e-9), a).Exceeded(limits));
        Assert.Equal([limit.LimitedBy!.Value], move.DemandAt(limit.Feed.Value * (1 + 1e-9), a).Exceeded(limits));
    }

    [Fact]
    public void Steps_between_moves()
    {
        BilinearModel model = BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1, 0.2], [0, 0.1], [0, 1e-5, 0, 0, 1e-5, 0]));
        SurfacePosition middle = SurfacePosition.FromMeters(0.1, 0.05);
        FollowedMove first = model.Follow(SurfacePosition.FromMeters(0, 0.05), middle, Length.FromMicrometers(1));
        FollowedMove next = model.Follow(middle, SurfacePosition.FromMeters(0.1, 0.1), Length.FromMicrometers(1));
        Assert.Equal(-1e-4, first.SlopeStepTo(next), 1e-15);
        Assert.Throws<ArgumentException>("next", () => next.SlopeStepTo(first));
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("feed", () => Roof().DemandAt(Speed.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("accelerationAlong", () => Roof().DemandAt(Speed.FromMetersPerSecond(1), Acceleration.FromMetersPerSecondSquared(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("limits.MaximumSpeed", () => Roof().LargestFeed(Slow with { MaximumSpeed = Speed.Zero }));
        Assert.Throws<ArgumentOutOfRangeException>("limits.MaximumAcceleration", () => Roof().LargestFeed(Slow with { MaximumAcceleration = Acceleration.Zero }));
        Assert.Throws<ArgumentOutOfRangeException>(
            "limits.MaximumSpeedStep", () => Roof().DemandAt(Speed.FromMetersPerSecond(1)).Exceeded(Slow with { MaximumSpeedStep = Speed.FromMetersPerSecond(-1) }));
        Assert.Throws<ArgumentNullException>("limits", () => Roof().LargestFeed(null!));
    }

    private static FollowedMove Roof() => BilinearModel.Through(ProbedGrid.FromHeights([0, 0.1, 0.2], [0, 0.1], [0, 1e-5, 0, 0, 1e-5, 0]))
        .Follow(SurfacePosition.FromMeters(0, 0.05), SurfacePosition.FromMeters(0.2, 0.05), Length.FromMicrometers(1));
}
