using System.Text;
using CommissioningPass;

Console.OutputEncoding = Encoding.UTF8;
return PassProgram.Run(args, Console.Out, Console.Error, terminal: !Console.IsOutputRedirected);
