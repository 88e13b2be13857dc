namespace PressRun.Web.Libraries.Files;

/// <summary>Words for the rows of the tables that files are brought into, by the English name that the table has.</summary>
public static class RowWords
{
    /// <summary>What the rows of a whole price list are.</summary>
    public const string WholeList = "wholeList";

    /// <summary>What they are: <c>print prices</c>.</summary>
    public static string Of(string name) => name switch
    {
        "papers" => Say($"papers"),
        "mailers" => Say($"mailers"),
        "postage services" => Say($"postage services"),
        "ways of selling" => Say($"ways of selling"),
        "sales" => Say($"sales"),
        "paper prices" => Say($"paper prices"),
        "print prices" => Say($"print prices"),
        "sheets" => Say($"sheets"),
        "whole-book prices" => Say($"whole-book prices"),
        "finishing" => Say($"finishing"),
        "papers with prices" => Say($"papers with prices"),
        WholeList => Say($"lines of a whole price list, as PressRun saves it"),
        _ => SayWhole(name),
    };

    /// <summary>So many of them: <c>1 print price</c>, <c>3 print prices</c>.</summary>
    /// <param name="name">The table's name.</param>
    /// <param name="number">How many.</param>
    /// <param name="count">That number as it is written.</param>
    public static string Of(string name, int number, string count) => name switch
    {
        "papers" => Say(number, $"{count} paper", $"{count} papers"),
        "mailers" => Say(number, $"{count} mailer", $"{count} mailers"),
        "postage services" => Say(number, $"{count} postage service", $"{count} postage services"),
        "ways of selling" => Say(number, $"{count} way of selling", $"{count} ways of selling"),
        "sales" => Say(number, $"{count} sale", $"{count} sales"),
        "paper prices" => Say(number, $"{count} paper price", $"{count} paper prices"),
        "print prices" => Say(number, $"{count} print price", $"{count} print prices"),
        "sheets" => Say(number, $"{count} sheet", $"{count} sheets"),
        "whole-book prices" => Say(number, $"{count} whole-book price", $"{count} whole-book prices"),
        "finishing" => Say(number, $"{count} finishing", $"{count} finishing"),
        "papers with prices" => Say(number, $"{count} paper with prices", $"{count} papers with prices"),
        WholeList => Say(number, $"{count} line of a whole price list, as PressRun saves it", $"{count} lines of a whole price list, as PressRun saves it"),
        _ => $"{count} {SayWhole(name)}",
    };
}
