using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using PressRun.Engine.Costing;

namespace PressRun.Engine.Tests.Architecture;

public sealed class EngineConventionsTests
{
    private static readonly Assembly Engine = typeof(PreparedJob).Assembly;

    private static readonly List<XElement> Members = [.. XDocument.Load(Path.ChangeExtension(Engine.Location, ".xml")).Descendants("member").Where(Says)];

    private static readonly HashSet<string> Documented = [.. Members.Select(NameOf)];

    private static readonly HashSet<string> Inherited = [.. Members.Where(member => member.Element("inheritdoc") is not null).Select(NameOf)];

    // By a tag of its own, or where the sentence names it: "A mass of so many grams".
    private static readonly Dictionary<string, HashSet<string>> Described = Members.ToDictionary(
        NameOf,
        member => member.Elements("param").Where(tag => !string.IsNullOrWhiteSpace(tag.Value)).Concat(member.Elements("summary").Descendants("paramref"))
            .Select(tag => tag.Attribute("name")!.Value).ToHashSet());

    public static TheoryData<Type> PublicTypes => [.. Engine.GetExportedTypes()];

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_and_its_members_say_what_they_are(Type type)
    {
        Assert.Contains("T:" + NameOf(type), Documented);
        var members = type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(member => member is PropertyInfo or FieldInfo { IsSpecialName: false } && member.GetCustomAttribute<CompilerGeneratedAttribute>() is null && !IsParameter(type, member));
        Assert.All(members, member => Assert.Contains($"{(member is FieldInfo ? 'F' : 'P')}:{NameOf(type)}.{member.Name}", Documented));
    }

    // What an operator's two sides are, its sentence says.
    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_method_says_of_each_thing_that_it_is_given_what_it_is(Type type)
    {
        var methods = type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(method => !method.IsSpecialName && method.GetCustomAttribute<CompilerGeneratedAttribute>() is null && !Inherited.Contains(NameOf(method)));
        Assert.All(methods, method => Assert.All(
            method.GetParameters(), parameter => Assert.True(Described.GetValueOrDefault(NameOf(method))?.Contains(parameter.Name!) == true, $"{NameOf(method)} lacks a param tag for {parameter.Name}.")));
    }

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_type_cannot_be_changed_once_it_is_built(Type type)
    {
        const BindingFlags everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance;
        Assert.All(type.GetProperties(everything), property => Assert.True(property.SetMethod is null || IsInit(property), property.Name));
        Assert.All(type.GetFields(everything).Where(_ => !type.IsEnum), field => Assert.True(field.IsInitOnly, field.Name));
        Assert.All(type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static), property => Assert.False(IsMutable(property.PropertyType), property.Name));
    }

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void A_public_class_is_sealed_and_a_public_struct_is_read_only(Type type) =>
        Assert.True(type.IsEnum || (type.IsValueType ? type.IsDefined(typeof(IsReadOnlyAttribute)) : type.IsSealed || type.IsAbstract));

    [Fact]
    public void Folders_are_namespaces_and_every_type_lives_in_one() =>
        Assert.All(Engine.GetExportedTypes(), type => Assert.Matches(@"^PressRun\.Engine\.[A-Z][A-Za-z]+$", type.Namespace!));

    // Positional parameters of a record are described by param tags of the type, which the compiler checks.
    private static bool IsParameter(Type type, MemberInfo member) =>
        type.GetConstructors().SelectMany(constructor => constructor.GetParameters()).Any(parameter => parameter.Name == member.Name);

    private static bool IsInit(PropertyInfo property) =>
        property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool IsMutable(Type type) =>
        type.IsArray || (type.IsGenericType && (type.GetGenericTypeDefinition() == typeof(List<>) || type.GetGenericTypeDefinition() == typeof(Dictionary<,>)));

    private static bool Says(XElement member) => member.Descendants("inheritdoc").Any() || !string.IsNullOrWhiteSpace(member.Element("summary")?.Value);

    private static string NameOf(XElement member) => member.Attribute("name")!.Value;

    // As the compiler writes it beside the assembly (C# language specification, annex D.4.2).
    private static string NameOf(MethodInfo method)
    {
        var parameters = method.GetParameters();
        return $"M:{NameOf(method.DeclaringType!)}.{method.Name}" + (parameters.Length == 0 ? "" : $"({string.Join(',', parameters.Select(parameter => Written(parameter.ParameterType)))})");
    }

    private static string Written(Type type) =>
        type.IsByRef ? Written(type.GetElementType()!) + "@"
        : type.IsArray ? Written(type.GetElementType()!) + "[]"
        : type.IsGenericParameter ? $"`{type.GenericParameterPosition}"
        : type.IsGenericType ? $"{NameOf(type.GetGenericTypeDefinition()).Split('`')[0]}{{{string.Join(',', type.GetGenericArguments().Select(Written))}}}"
        : NameOf(type);

    private static string NameOf(Type type) => type.FullName!.Replace('+', '.');
}
