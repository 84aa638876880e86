using System.Reflection;
using System.Runtime.CompilerServices;

namespace PrinterMath.Architecture.Tests;

public sealed class PublicSurfaceTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    [Fact]
    public void Nothing_public_can_be_inherited_from_outside() =>
        Assert.All(Packages.PublicTypes, type => Assert.True(type.IsSealed || type.IsInterface || IsClosed(type), $"{type} is open for inheritance"));

    [Fact]
    public void Nothing_public_can_be_changed()
    {
        foreach (Type type in Packages.PublicTypes)
        {
            Assert.All(type.GetFields(Declared), field => Assert.True(field.IsInitOnly || field.IsLiteral || type.IsEnum, $"{type}.{field.Name} is writable"));
            Assert.All(type.GetProperties(Declared), property => Assert.True(property.SetMethod is null || IsInitOnly(property), $"{type}.{property.Name} can be set"));
        }
    }

    [Fact]
    public void Nothing_public_hands_out_an_array_or_a_growing_list()
    {
        foreach (Type type in Packages.PublicTypes)
        {
            Assert.All(type.GetProperties(Declared), property => Assert.False(IsMutableCollection(property.PropertyType), $"{type}.{property.Name}"));
            Assert.All(type.GetMethods(Declared), method => Assert.False(IsMutableCollection(method.ReturnType), $"{type}.{method.Name}"));
        }
    }

    [Fact]
    public void No_public_signature_shows_a_type_of_the_linear_algebra_library()
    {
        foreach (Type type in Packages.PublicTypes)
        {
            Type[] shown =
            [
                .. type.GetProperties(Declared).Select(property => property.PropertyType),
                .. type.GetMethods(Declared).SelectMany(method => method.GetParameters().Select(p => p.ParameterType).Append(method.ReturnType)),
                .. type.GetConstructors(Declared).SelectMany(constructor => constructor.GetParameters().Select(p => p.ParameterType)),
                .. type.GetInterfaces(),
            ];
            Assert.All(shown.SelectMany(WithArguments), part => Assert.False(
                part.Namespace?.StartsWith("MathNet", StringComparison.Ordinal) ?? false, $"{type} shows {part}"));
        }
    }

    [Fact]
    public void No_static_state_can_be_changed() =>
        Assert.All(
            Packages.AllTypes.SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)),
            field => Assert.True(field.IsInitOnly || field.IsLiteral, $"{field.DeclaringType}.{field.Name} is writable static state"));

    private static bool IsClosed(Type type) =>
        type.IsAbstract && type.GetConstructors(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance)
            .All(constructor => constructor.IsPrivate || constructor.IsAssembly || constructor.IsFamilyAndAssembly);

    private static bool IsInitOnly(PropertyInfo property) =>
        property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsMutableCollection(Type type) =>
        type.IsArray
        || (type.IsGenericType && (type.GetGenericTypeDefinition() == typeof(List<>) || type.GetGenericTypeDefinition() == typeof(Dictionary<,>)));

    private static IEnumerable<Type> WithArguments(Type type) =>
        type.HasElementType ? WithArguments(type.GetElementType()!) : type.IsGenericType ? type.GetGenericArguments().SelectMany(WithArguments).Append(type) : [type];
}
