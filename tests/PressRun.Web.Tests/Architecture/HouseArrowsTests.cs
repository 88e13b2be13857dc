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
        var reckoning = Reckoning.In(Web.Location);
        NotInPages(reckoning, "let the engine reckon it");
        // What only writes and draws does: the search finds it.
        Assert.Contains(reckoning, place => place.Type.EndsWith(".PressFormat", StringComparison.Ordinal));
    }

    // A page may read figures off what its service has worked out, such as the cost of one quantity while somebody drags it.
    [Fact]
    public void A_page_asks_its_features_service_and_never_prepares_or_costs_a_job_itself()
    {
        var costings = Reckoning.Costings(Web.Location);
        NotInPages(costings, "let the feature's service call it");
        // Services do: the search finds them.
        Assert.Contains(costings, place => place.Type.EndsWith("Service", StringComparison.Ordinal));
    }

    // What is asked in a page is asked nowhere else: neither a file of the same figures nor a test gets at it.
    [Fact]
    public void A_page_shows_answers_and_asks_the_engine_for_none()
    {
        var questions = Reckoning.Questions(Web.Location);
        NotInPages(questions, "let what the feature's service answers with ask it");
        // What services answer with does: the search finds it.
        Assert.Contains(questions, place => place.Type.EndsWith(".CopiesView", StringComparison.Ordinal));
    }

    private static void NotInPages(IEnumerable<(string Type, string Method, string Called)> places, string instead)
    {
        var pages = Web.GetTypes().Where(type => typeof(IComponent).IsAssignableFrom(type)).Select(type => type.FullName).ToHashSet(StringComparer.Ordinal);
        var found = places.Where(place => pages.Contains(place.Type)).Select(place => $"{place.Type}.{place.Method} calls {place.Called}: {instead}").Distinct().ToList();
        Assert.True(found.Count == 0, string.Join(Environment.NewLine, found));
    }

    private static IEnumerable<string?> OwnReferences(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(reference => reference.Name).Where(name => name!.StartsWith("PressRun.", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
