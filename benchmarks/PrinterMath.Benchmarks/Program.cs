using BenchmarkDotNet.Running;
using PrinterMath.Benchmarks;

if (args is ["serve"])
{
    Server.Run(Console.In, Console.Out);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Inputs).Assembly).Run(args);
}
