namespace PrinterMath.Extrusion.Tests;

[Trait("Evidence", "Published")]
public sealed class CylinderHeatingReferenceTests
{
    // Carslaw and Jaeger 1959, 7.6: Σ 2/(λ·J₁)·exp(−λ²·Fo) and Σ 4/λ²·exp(−λ²·Fo), 4000 terms with SciPy, Data/melt_reference.py.
    [Theory]
    [InlineData(1e-3, 1.0000000000000009, 0.9296411112925987)]
    [InlineData(1e-2, 0.9999999999724921, 0.7845260618205068)]
    [InlineData(0.1, 0.8483551133253104, 0.3941758060333084)]
    [InlineData(0.2, 0.5014868606073982, 0.21785244745725163)]
    [InlineData(0.4, 0.15848877341485948, 0.06843129716917043)]
    [InlineData(0.8, 0.015680902343933392, 0.006770304980702855)]
    public void Wall_at_constant_temperature(double fourier, double center, double mean)
    {
        Assert.Equal(center, CylinderHeating.UnaccomplishedAtCenter(fourier), 1e-12);
        Assert.Equal(mean, CylinderHeating.UnaccomplishedMean(fourier), 1e-12);
    }

    // Carslaw and Jaeger 1959, 7.7: λ·J₁ = Bi·J₀, 400 roots with SciPy's brentq, Data/melt_reference.py.
    [Theory]
    [InlineData(0.1, 0.05, 0.9998811976842882, 0.9901793120537894)]
    [InlineData(0.1, 0.4, 0.9475813917196798, 0.9247464050812434)]
    [InlineData(0.1, 2.0, 0.693583635134091, 0.6768072770294683)]
    [InlineData(1.0, 0.05, 0.9988978005419428, 0.9156931737291153)]
    [InlineData(1.0, 0.4, 0.6420022024806149, 0.5238174076896427)]
    [InlineData(1.0, 2.0, 0.05152071846127844, 0.042010574867484135)]
    [InlineData(10.0, 0.05, 0.9936723015992731, 0.6711016136303504)]
    [InlineData(10.0, 0.4, 0.23442019301116188, 0.12023076209802643)]
    [InlineData(10.0, 2.0, 0.00011729640430718143, 6.0147380570158644e-05)]
    [InlineData(100.0, 0.05, 0.9882731172413814, 0.5625729636728507)]
    [InlineData(100.0, 0.4, 0.16586799689355844, 0.07304379149572128)]
    [InlineData(100.0, 2.0, 1.9088397558431916e-05, 8.405566926645586e-06)]
    public void Heated_through_a_film(double biot, double fourier, double center, double mean)
    {
        Assert.Equal(center, CylinderHeating.UnaccomplishedAtCenter(fourier, biot), 1e-11);
        Assert.Equal(mean, CylinderHeating.UnaccomplishedMean(fourier, biot), 1e-11);
    }

    // Crank 1975, 5.3, from memory: 4·√(Fo/π) − Fo − Fo^1.5/(3·√π) is taken up at short times; the next term is Fo²/8.
    [Theory]
    [InlineData(1e-8)]
    [InlineData(1e-6)]
    [InlineData(1e-4)]
    public void Short_times(double fourier) => Assert.Equal(
        (4 * Math.Sqrt(fourier / Math.PI)) - fourier - (Math.Pow(fourier, 1.5) / (3 * Math.Sqrt(Math.PI))), 1 - CylinderHeating.UnaccomplishedMean(fourier), (fourier * fourier) + 1e-15);
}
