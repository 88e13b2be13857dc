using System.Net;
using System.Text.RegularExpressions;
using Mono.Cecil;
using Mono.Cecil.Cil;
using PressRun.Engine.Costing;

namespace PressRun.Web.Tests.Architecture;

/// <summary>A text of the app as it stands in its code.</summary>
/// <param name="About">What it is about where its words mean several things; null elsewhere.</param>
/// <param name="Text">The English text, its gaps numbered.</param>
/// <param name="Type">The type that it stands in.</param>
/// <param name="Method">The method that it stands in.</param>
internal sealed record TextOfCode(string? About, string Text, string Type, string Method);

/// <summary>Reads out of the built app what it says: texts that can be told in another language, and words that cannot.</summary>
internal static partial class TextsOfCode
{
    private static readonly HashSet<string> WordyAttributes = ["aria-label", "aria-description", "aria-roledescription", "title", "placeholder", "alt", "data-label"];

    private static readonly HashSet<string> PlainParameters =
        ["Class", "Id", "DraftKey", "Type", "InputMode", "Field", "Href", "Name", "Value", "ViewBox", "AutoComplete", "Kind", "For"];

    /// <summary>All texts that are looked up, in the order of the code.</summary>
    public static IReadOnlyList<TextOfCode> In(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return [.. Methods(module).SelectMany(method => Looked(method).Select(found => new TextOfCode(found.About, found.Text, Outermost(method.DeclaringType).FullName, method.Name)))];
    }

    /// <summary>Whole sentences that other projects make and pages show, and what is not for readers as its pages say it.</summary>
    public static IReadOnlyList<string> Wholes(params IEnumerable<string> paths) => [.. paths.SelectMany(Wholes).Distinct(StringComparer.Ordinal)];

    /// <summary>Words that pages write without looking them up, each with its type.</summary>
    public static IReadOnlyList<(string Type, string Words)> WrittenByPages(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return [.. Methods(module).SelectMany(method => Written(method).Select(words => (Outermost(method.DeclaringType).FullName, words)))];
    }

    /// <summary>Strings of two words or more that are neither looked up nor the message of an exception, each with its type.</summary>
    public static IReadOnlyList<(string Type, string Words)> Unlooked(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return [.. Methods(module).SelectMany(method => Loose(method).Select(words => (Outermost(method.DeclaringType).FullName, words)))];
    }

    /// <summary>Types in which lists of what stands in the way are handed on in the engine's own words: a lambda answers with the rule as it stands.</summary>
    public static IReadOnlyList<string> RulesUnlooked(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return [.. Methods(module).Where(IsRuleAlone).Select(method => Outermost(method.DeclaringType).FullName).Distinct()];
    }

    /// <summary>Beginnings of sentences that another project puts together, each with its type.</summary>
    public static IReadOnlyList<(string Type, string Words)> Beginnings(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        return [.. Methods(module).SelectMany(method => method.Body.Instructions
            .Where(instruction => instruction.OpCode == OpCodes.Ldstr && Beginning().IsMatch((string)instruction.Operand) && !IsForHosts(instruction) && !EndsInException(instruction))
            .Select(instruction => (Outermost(method.DeclaringType).FullName, (string)instruction.Operand)))];
    }

    private static List<string> Wholes(string path)
    {
        using var module = ModuleDefinition.ReadModule(path);
        var edits = module.GetTypes().SelectMany(type => type.CustomAttributes).Where(attribute => attribute.AttributeType.Name == "EditsAttribute").Select(attribute => (string)attribute.ConstructorArguments[0].Value);
        var sentences = module.Assembly.Name.Name == "PressRun.Web"
            ? []
            : Methods(module).SelectMany(method => method.Body.Instructions)
                .Where(instruction => instruction.OpCode == OpCodes.Ldstr && Sentence().IsMatch((string)instruction.Operand) && !IsPiece(instruction) && !EndsInException(instruction))
                .Select(instruction => (string)instruction.Operand);
        return [.. edits, .. sentences];
    }

    private static bool IsRuleAlone(MethodDefinition method) =>
        method.DeclaringType.IsNested
        && method.Body.Instructions is [.., { Operand: MethodReference { Name: "get_Rule", DeclaringType.Name: nameof(Problem) } }, { OpCode.Code: Code.Ret }];

    // Of a sentence that is put together.
    private static bool IsPiece(Instruction loads) => loads.Next?.Operand is MethodReference { Name: "AppendLiteral" or "Concat" };

    private static IEnumerable<MethodDefinition> Methods(ModuleDefinition module) => module.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody);

    // The compiler loads the text, makes the array of what fills its gaps, and calls the factory: the array is made in the next two instructions.
    private static IEnumerable<(string? About, string Text)> Looked(MethodDefinition method) => method.Body.Instructions
        .Where(instruction => instruction.OpCode == OpCodes.Ldstr && BeginsText(instruction))
        .Select(instruction => (About(instruction), (string)instruction.Operand));

    private static bool BeginsText(Instruction loads) =>
        loads.Next is { } next && (next.Operand is MethodReference { Name: "Empty", DeclaringType.FullName: "System.Array" }
            ? IsFactory(next.Next)
            : next.Next is { OpCode.Code: Code.Newarr, Operand: TypeReference { FullName: "System.Object" } } made && EndsInFactory(made));

    // What fills the gaps may itself be a text: factories close in the reverse order of their beginnings.
    private static bool EndsInFactory(Instruction made)
    {
        var open = 1;
        for (var at = made.Next; at is not null; at = at.Next)
        {
            open += at.OpCode == OpCodes.Newarr && at.Operand is TypeReference { FullName: "System.Object" } ? 1 : 0;
            open -= TakesArray(at) ? 1 : 0;
            if (open == 0)
            {
                return IsFactory(at);
            }
        }

        return false;
    }

    private static bool TakesArray(Instruction call) => call.Operand is MethodReference { Parameters: [.., { ParameterType.FullName: "System.Object[]" }] };

    // An address that is put together without a culture is no text.
    private static bool IsFactory(Instruction call) =>
        call.Operand is MethodReference { Name: "Create", DeclaringType.Name: "FormattableStringFactory" } && call.Next?.Operand is not MethodReference { Name: "Invariant" };

    // Say(about, text) loads what it is about just before the text.
    private static string? About(Instruction loads) => loads.Previous is { OpCode.Code: Code.Ldstr } before && IsSaidAbout(loads) ? (string)before.Operand : null;

    private static bool IsSaidAbout(Instruction loads)
    {
        var at = loads;
        while (at is not null && !IsFactory(at))
        {
            at = at.Next;
        }

        return at?.Next?.Operand is MethodReference { Name: "Say", Parameters: [{ ParameterType.FullName: "System.String" }, _] };
    }

    private static IEnumerable<string> Written(MethodDefinition method)
    {
        foreach (var instruction in method.Body.Instructions)
        {
            if (instruction.Operand is not MethodReference { DeclaringType.Name: "RenderTreeBuilder" } called)
            {
                continue;
            }

            var (last, name) = Strings(instruction);
            if (called.Name == "AddMarkupContent" && last is not null && HasWords(WebUtility.HtmlDecode(Tag().Replace(Attribute().Replace(last, " $1 "), " "))))
            {
                yield return last;
            }
            else if (called.Name == "AddContent" && last is not null && HasWords(last))
            {
                yield return last;
            }
            else if (called.Name == "AddAttribute" && last is not null && name is not null && WordyAttributes.Contains(name) && HasWords(last))
            {
                yield return $"{name}={last}";
            }
            else if (called.Name == "AddComponentParameter" && last is not null && name is not null && !PlainParameters.Contains(name) && IsSentence(last))
            {
                yield return $"{name}={last}";
            }
        }
    }

    // The string just before a call, perhaps through a check of its type, and the one before that.
    private static (string? Last, string? Name) Strings(Instruction call)
    {
        var at = call.Previous;
        while (at is { Operand: MethodReference { Name: "TypeCheck" } } or { OpCode.Code: Code.Nop })
        {
            at = at.Previous;
        }

        return at is { OpCode.Code: Code.Ldstr } ? ((string)at.Operand, at.Previous is { OpCode.Code: Code.Ldstr } before ? (string)before.Operand : null) : (null, null);
    }

    private static IEnumerable<string> Loose(MethodDefinition method)
    {
        foreach (var instruction in method.Body.Instructions.Where(instruction => instruction.OpCode == OpCodes.Ldstr && !BeginsText(instruction)))
        {
            var words = Plain((string)instruction.Operand);
            if (IsSentence(words) && words.Contains(' ', StringComparison.Ordinal) && !IsOfPage(instruction) && !IsOfClass(instruction) && !IsCompared(instruction) && !IsForHosts(instruction)
                && About(instruction.Next ?? instruction) != words && !EndsInException(instruction))
            {
                yield return words;
            }
        }
    }

    // What a page writes by itself is looked at apart; the rest of it are classes and addresses.
    private static bool IsOfPage(Instruction loads) => loads.Next?.Operand is MethodReference { DeclaringType.Name: "RenderTreeBuilder" };

    // Words for a log, and why an address asks nobody who they are.
    private static bool IsForHosts(Instruction loads)
    {
        var at = loads.Next;
        for (var steps = 0; at is not null && steps < 12; steps++, at = at.Next)
        {
            if (at.Operand is MethodReference { Name: "Define" or "DefineScope", DeclaringType.Name: "LoggerMessage" } or MethodReference { Name: "Public" })
            {
                return true;
            }
        }

        return false;
    }

    // What decides between the classes of an element stands between the attribute's name and the call that adds it.
    private static bool IsOfClass(Instruction loads)
    {
        var at = loads.Previous;
        while (at is not null and not { Operand: MethodReference { DeclaringType.Name: "RenderTreeBuilder" } } and not { Operand: "class" })
        {
            at = at.Previous;
        }

        return at?.Operand is "class";
    }

    // What is compared is a key.
    private static bool IsCompared(Instruction loads) => loads.Next?.Operand is MethodReference { Name: "op_Equality" or "op_Inequality", DeclaringType.FullName: "System.String" };

    // What is refused to a person is shown to them; all other messages are for programmers.
    private static bool EndsInException(Instruction loads)
    {
        var at = loads.Next;
        for (var steps = 0; at is not null && steps < 40; steps++, at = at.Next)
        {
            if (at.OpCode == OpCodes.Newobj)
            {
                return at.Operand is MethodReference made && made.DeclaringType.Name.EndsWith("Exception", StringComparison.Ordinal) && made.DeclaringType.Name != "AccessRefusedException";
            }
        }

        return false;
    }

    // The app's own name is the same everywhere.
    private static bool HasWords(string words) => Word().IsMatch(words.Replace("PressRun", "", StringComparison.Ordinal));

    // What ends in a hyphen goes on as one word: a class.
    private static bool IsSentence(string words) => !words.EndsWith('-') && (TwoWords().IsMatch(words) || Capitalised().IsMatch(words));

    // What of markup is read or heard, also of a piece that begins or ends within an element.
    private static string Plain(string markup) => PieceOfTag().Replace(Tag().Replace(Attribute().Replace(markup, " $1 "), " "), " ");

    private static TypeDefinition Outermost(TypeDefinition type) => type.DeclaringType is { } around ? Outermost(around) : type;

    [GeneratedRegex(@"^[A-Z][^{}\n]* [^{}\n]* [^{}\n]*\.$")]
    private static partial Regex Sentence();

    [GeneratedRegex("^[A-Z][a-z']* [a-z][^{}\n]*[^.{}\n]$")]
    private static partial Regex Beginning();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("<[!/a-z][^>]*$|^[^<>]*>(?=<)|^>")]
    private static partial Regex PieceOfTag();

    [GeneratedRegex("""(?:aria-label|title|placeholder|alt|data-label)="([^"]*)[">]""")]
    private static partial Regex Attribute();

    [GeneratedRegex("[A-Za-z]{2}")]
    private static partial Regex Word();

    [GeneratedRegex("[A-Za-z,]{2,} [A-Za-z]{2,}")]
    private static partial Regex TwoWords();

    [GeneratedRegex("^[A-Z][a-z]{2,}$")]
    private static partial Regex Capitalised();
}
