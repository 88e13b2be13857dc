using Mono.Cecil;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Where a built assembly reckons. What the compiler nests counts to the type around it.</summary>
internal static class Reckoning
{
    private static readonly HashSet<string> Operators = ["op_Addition", "op_Subtraction", "op_Multiply", "op_Division", "op_Modulus"];

    private static readonly HashSet<string> Quantities = [typeof(decimal).FullName!, typeof(Length).FullName!, typeof(Mass).FullName!];

    private static readonly HashSet<string> ThereToBeRead = [typeof(Length).Namespace!, typeof(PaperWeight).Namespace!, typeof(BindingRules).Namespace!];

    private static readonly HashSet<string> Sorts = [$"{nameof(PileRun)}.{nameof(PileRun.Of)}", $"{nameof(PostageTable)}.{nameof(PostageTable.InForce)}"];

    private static readonly string Engine = typeof(PreparedJob).Assembly.GetName().Name!;

    /// <summary>Where money or measures are added, taken away, multiplied or divided. To say what is below 0 as "less" is wording and not reckoning.</summary>
    public static IReadOnlyList<(string Type, string Method, string Called)> In(string path) =>
        Calls(path, called => Operators.Contains(called.Name) && Quantities.Contains(called.DeclaringType.FullName));

    /// <summary>Where the engine is asked to prepare something, or a prepared job to cost something. Its properties, and the cost of one quantity, are there to be read.</summary>
    public static IReadOnlyList<(string Type, string Method, string Called)> Costings(string path) => Calls(path, called =>
        called.DeclaringType.Scope.Name == Engine
        && (called.Name == nameof(PreparedJob.Prepare)
            || (called.DeclaringType.FullName == typeof(PreparedJob).FullName && called.Name != nameof(PreparedJob.LandedCost) && !called.Name.StartsWith("get_", StringComparison.Ordinal))));

    /// <summary>Where the engine is asked for an answer: for one that may be refused, or for one that is worked out of what is handed over. Units, sizes and the rules of bindings
    /// are there to be read, and so is what an answer says of itself; two that only sort what is shown are left out.</summary>
    public static IReadOnlyList<(string Type, string Method, string Called)> Questions(string path) => Calls(path, called =>
        called.DeclaringType.Scope.Name == Engine
        && !called.Name.StartsWith("get_", StringComparison.Ordinal)
        && !called.Name.StartsWith("op_", StringComparison.Ordinal)
        && (called.ReturnType.FullName.StartsWith(typeof(Outcome<>).FullName!, StringComparison.Ordinal)
            || (!called.HasThis && !ThereToBeRead.Contains(called.DeclaringType.Namespace) && !Sorts.Contains($"{called.DeclaringType.Name}.{called.Name}"))));

    private static IReadOnlyList<(string Type, string Method, string Called)> Calls(string path, Predicate<MethodReference> sought)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return
        [
            .. from type in module.GetTypes()
               from method in type.Methods
               where method.HasBody
               from called in method.Body.Instructions.Select(instruction => instruction.Operand).OfType<MethodReference>()
               where sought(called)
               select (Outermost(type).FullName, method.Name, $"{called.DeclaringType.Name}.{called.Name}"),
        ];
    }

    private static TypeDefinition Outermost(TypeDefinition type) => type.DeclaringType is { } around ? Outermost(around) : type;
}
