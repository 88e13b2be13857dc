using Mono.Cecil;
using PressRun.Engine.Measures;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Where a built assembly adds, takes away, multiplies or divides money or measures. To say what is below 0 as "less" is wording and not reckoning.</summary>
internal static class Reckoning
{
    private static readonly HashSet<string> Operators = ["op_Addition", "op_Subtraction", "op_Multiply", "op_Division", "op_Modulus"];

    private static readonly HashSet<string> Quantities = [typeof(decimal).FullName!, typeof(Length).FullName!, typeof(Mass).FullName!];

    /// <summary>Every call, with the type that it stands in; what the compiler nests counts to the type around it.</summary>
    public static IReadOnlyList<(string Type, string Method, string Called)> In(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return
        [
            .. from type in module.GetTypes()
               from method in type.Methods
               where method.HasBody
               from called in method.Body.Instructions.Select(instruction => instruction.Operand).OfType<MethodReference>()
               where Operators.Contains(called.Name) && Quantities.Contains(called.DeclaringType.FullName)
               select (Outermost(type).FullName, method.Name, $"{called.DeclaringType.Name}.{called.Name}"),
        ];
    }

    private static TypeDefinition Outermost(TypeDefinition type) => type.DeclaringType is { } around ? Outermost(around) : type;
}
