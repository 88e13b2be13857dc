using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using PressRun.Engine.Costing;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace PressRun.Engine.Tests.Architecture;

/// <summary>The engine is pure: it takes a job and answers, and touches nothing else.</summary>
public sealed class EngineArrowsTests
{
    private static readonly System.Reflection.Assembly Engine = typeof(PreparedJob).Assembly;

    private static readonly ArchUnitNET.Domain.Architecture Loaded = new ArchLoader().LoadAssembliesIncludingDependencies(Engine).Build();

    private static readonly string[] Impure =
    [
        @"^System\.IO(\.|$)", @"^System\.Net(\.|$)", @"^System\.Data(\.|$)", @"^System\.Diagnostics(\.|$)", @"^System\.Security(\.|$)", @"^System\.Text\.Json(\.|$)",
    ];

    private static readonly string[] Ambient =
    [
        @"^System\.TimeProvider$", @"^System\.DateTime$", @"^System\.DateTimeOffset$", @"^System\.Random$", @"^System\.Environment$", @"^System\.Console$",
        @"^System\.AppContext$", @"^System\.TimeZoneInfo$",
    ];

    // The compiler fills a list that is written out as an expression through the framework's InteropServices.
    [Fact]
    public void It_references_the_framework_a_numerical_library_and_nothing_of_ours() =>
        Assert.All(Engine.GetReferencedAssemblies(), assembly => Assert.Matches(@"^System\.(Runtime|Collections|Linq|Memory|Runtime\.Numerics|Runtime\.Extensions|Runtime\.InteropServices)$|^MathNet\.Numerics$", assembly.Name!));

    [Fact]
    public void It_reads_and_writes_no_file_network_database_or_process() =>
        Assert.All(Impure, space => Types().That().ResideInAssembly(Engine).Should().NotDependOnAny(Types(true).That().ResideInNamespaceMatching(space))
            .WithoutRequiringPositiveResults().Check(Loaded));

    [Fact]
    public void It_has_no_clock_no_chance_and_no_surroundings() =>
        Assert.All(Ambient, name => Types().That().ResideInAssembly(Engine).Should().NotDependOnAny(Types(true).That().HaveFullNameMatching(name))
            .WithoutRequiringPositiveResults().Check(Loaded));

    [Fact]
    public void The_rules_above_can_fail() =>
        Assert.ThrowsAny<Exception>(() => Types().That().ResideInAssembly(Engine).Should().NotDependOnAny(Types(true).That().HaveFullNameMatching(@"^System\.DateOnly$")).Check(Loaded));
}
