using System.Reflection;
using System.Runtime.CompilerServices;

namespace PrinterMath.Architecture.Tests;

public sealed class DependencyTests
{
    [Fact]
    public void Packages_know_the_kernel_and_never_each_other()
    {
        foreach (Assembly package in Packages.All)
        {
            string[] own = [.. package.GetReferencedAssemblies()
                .Select(reference => reference.Name ?? string.Empty)
                .Where(name => name.StartsWith("PrinterMath", StringComparison.Ordinal))];
            string[] allowed = package == Packages.Kernel ? [] : ["PrinterMath.Measurement"];
            Assert.Equal(allowed, own);
        }
    }

    [Fact]
    public void Packages_do_not_open_their_insides_to_others() =>
        Assert.All(Packages.All, package => Assert.Empty(package.GetCustomAttributes<InternalsVisibleToAttribute>()));

    [Fact]
    public void Packages_do_no_input_or_output()
    {
        string[] forbidden = ["System.IO.FileSystem", "System.Console", "System.Net.Http", "System.Diagnostics.Process"];
        Assert.All(Packages.All, package => Assert.DoesNotContain(package.GetReferencedAssemblies(), reference => forbidden.Contains(reference.Name)));
    }

    [Fact]
    public void Namespaces_are_the_packages() =>
        Assert.All(Packages.PublicTypes, type => Assert.Equal(type.Assembly.GetName().Name, type.Namespace));
}
