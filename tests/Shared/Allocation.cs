namespace PrinterMath;

internal static class Allocation
{
    private const int Calls = 1000;

    /// <summary>Not one byte over a thousand calls, after as many that let the runtime compile and initialise.</summary>
    internal static void None(Func<int, double> call)
    {
        Run(call);
        long before = GC.GetAllocatedBytesForCurrentThread();
        double sum = Run(call);
        long after = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(0, after - before);
        Assert.True(double.IsFinite(sum), "the calls gave numbers");
    }

    private static double Run(Func<int, double> call)
    {
        double sum = 0;
        for (int i = 0; i < Calls; i++)
        {
            sum += call(i);
        }

        return sum;
    }
}
