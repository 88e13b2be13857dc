using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Web.Kept;
using PressRun.Web.Start;

namespace PressRun.Browser.Tests.Pages;

/// <summary>Every page that the app has, found by its routes, so that a new page is looked at without being listed.</summary>
internal static partial class EveryPage
{
    /// <summary>The title and the printing that stand in for those of an address: it has two plans and was printed.</summary>
    public const string Title = "The Four O'Clock Ferry Is a Liar";

    /// <summary>Its printing.</summary>
    public const int Printing = 2;

    /// <summary>One route of each page with a circuit, and of each that a phone keeps; the longer one where there are two.</summary>
    public static TheoryData<string> Routes() =>
        new(typeof(StartPage).Assembly.GetTypes()
            .Where(type => !type.IsDefined(typeof(ExcludeFromInteractiveRoutingAttribute), false)
                || type.GetCustomAttributes(typeof(LayoutAttribute), false).Cast<LayoutAttribute>().Any(layout => layout.LayoutType == typeof(KeptLayout)))
            .Select(type => type.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>().Select(route => route.Template).MaxBy(route => route.Length))
            .OfType<string>()
            .Order(StringComparer.Ordinal));

    /// <summary>The address of a route for the sample press.</summary>
    /// <param name="route">Such as <c>/titles/{Slug}</c>.</param>
    /// <param name="slug">Of <see cref="Title"/>.</param>
    /// <param name="plan">The plan that its printing goes by.</param>
    public static string Address(string route, string slug, PlanRecord plan) => Parameter().Replace(route, match => match.Groups["name"].Value switch
    {
        "Slug" => slug,
        "Printing" => Printing.ToString(CultureInfo.InvariantCulture),
        "Id" => plan.ShopId,
        "Number" => "1",
        var name => throw new InvalidOperationException($"{route} needs an example of {name}."),
    }).TrimStart('/');

    [GeneratedRegex(@"\{(?<name>\w+)(:\w+)?\}")]
    private static partial Regex Parameter();
}
