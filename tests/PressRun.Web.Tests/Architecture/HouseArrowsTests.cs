using System.Reflection;
using Microsoft.AspNetCore.Components;
using PressRun.Data;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.Web.Api;

namespace PressRun.Web.Tests.Architecture;

/// <summary>Who may know whom. The engine's own arrows are tested beside the engine.</summary>
public class HouseArrowsTests
{
    private static readonly Assembly Engine = typeof(Job).Assembly;
    private static readonly Assembly JobFile = typeof(JobReader).Assembly;
    private static readonly Assembly Data = typeof(PressRunDbContext).Assembly;
    private static readonly Assembly CommandLine = Assembly.Load("pressrun");
    private static readonly Assembly Migrations = Assembly.Load("PressRun.Migrations");
    private static readonly Assembly Web = typeof(PressRunApi).Assembly;

    [Fact]
    public void The_job_file_knows_the_engine_and_nothing_else_of_ours() => Assert.Equal([Engine.GetName().Name], OwnReferences(JobFile));

    [Fact]
    public void The_data_know_the_engine_and_the_job_file() =>
        Assert.Equal([Engine.GetName().Name, JobFile.GetName().Name], OwnReferences(Data));

    [Fact]
    public void The_command_line_knows_the_job_file_and_the_engine_behind_it() =>
        Assert.Equal([Engine.GetName().Name, JobFile.GetName().Name], OwnReferences(CommandLine));

    [Fact]
    public void Migrations_know_the_data_and_nothing_else_of_ours() => Assert.Equal([Data.GetName().Name], OwnReferences(Migrations));

    [Fact]
    public void Nobody_knows_the_pages() =>
        Assert.All([Engine, JobFile, Data, CommandLine, Migrations], assembly => Assert.DoesNotContain(Web.GetName().Name, OwnReferences(assembly)));

    [Fact]
    public void Only_the_data_know_how_rows_are_kept() =>
        Assert.All([Engine, JobFile, CommandLine, Web], assembly => Assert.DoesNotContain(
            assembly.GetReferencedAssemblies(),
            reference => reference.Name!.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal) || reference.Name.StartsWith("Npgsql", StringComparison.Ordinal)));

    [Fact]
    public void Pages_hold_no_arithmetic_of_money_and_measures()
    {
        var pages = Web.GetTypes().Where(type => typeof(IComponent).IsAssignableFrom(type)).Select(type => type.FullName).ToHashSet(StringComparer.Ordinal);
        var reckoning = Reckoning.In(Web.Location);
        var found = reckoning.Where(place => pages.Contains(place.Type)).Select(place => $"{place.Type}.{place.Method} calls {place.Called}").ToList();
        Assert.True(found.Count == 0, string.Join(Environment.NewLine, found));
        // What only writes and draws does: the search finds it.
        Assert.Contains(reckoning, place => place.Type.EndsWith(".PressFormat", StringComparison.Ordinal));
    }

    // A page may read figures off what its service has worked out, such as the cost of one quantity while somebody drags it.
    [Fact]
    public void A_page_asks_its_features_service_and_never_prepares_or_costs_a_job_itself()
    {
        var pages = Web.GetTypes().Where(type => typeof(IComponent).IsAssignableFrom(type)).Select(type => type.FullName).ToHashSet(StringComparer.Ordinal);
        var costings = Reckoning.Costings(Web.Location);
        var found = costings.Where(place => pages.Contains(place.Type)).Select(place => $"{place.Type}.{place.Method} calls {place.Called}: let the feature's service call it").Distinct().ToList();
        Assert.True(found.Count == 0, string.Join(Environment.NewLine, found));
        // Services do: the search finds them.
        Assert.Contains(costings, place => place.Type.EndsWith("Service", StringComparison.Ordinal));
    }

    private static IEnumerable<string?> OwnReferences(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(reference => reference.Name).Where(name => name!.StartsWith("PressRun.", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
