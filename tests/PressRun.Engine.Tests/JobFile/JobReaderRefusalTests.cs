using PressRun.JobFile;

namespace PressRun.Engine.Tests.JobFile;

public class JobReaderRefusalTests
{
    /// <summary>A place of the worked example, what is written there, the path of the one problem that results, and words of its rule.</summary>
    public static TheoryData<string, string, string, string> BadInput => new()
    {
        { "schema", "\"pressrun/job/2\"", "$.schema", "pressrun/job/1" },
        { "schema", "(gone)", "$.schema", "required" },
        { "date", "\"2026-02-30\"", "$.date", "2026-03-02" },
        { "date", "\"02.03.2026\"", "$.date", "year-month-day" },
        { "date", "(gone)", "$.date", "required" },
        { "currency", "\"usd\"", "$.currency", "capitals" },
        { "currency", "\"XXX\"", "$.currency", "ISO 4217" },
        { "currency", "5", "$.currency", "ISO 4217" },
        { "quantity", "0", "$.quantity", "1 to 1,000,000" },
        { "quantity", "1000001", "$.quantity", "1 to 1,000,000" },
        { "quantity", "1.5", "$.quantity", "whole number" },
        { "quantity", "\"150\"", "$.quantity", "whole number" },
        { "quantity", "(gone)", "$.quantity", "required" },
        { "freeCopies", "-1", "$.freeCopies", "0 to 1,000,000" },
        { "reclaimTax", "\"no\"", "$.reclaimTax", "true or false" },
        { "quantty", "5", "$.quantty", "Did you mean \"quantity\"?" },
        { "edition", "(gone)", "$.edition", "required" },
        { "edition", "[]", "$.edition", "object" },
        { "edition.page", "(gone)", "$.edition.page", "required" },
        { "edition.page.width", "(gone)", "$.edition.page.width", "required" },
        { "edition.page.width", "\"0 in\"", "$.edition.page.width", "1 mm to 10 m" },
        { "edition.page.width", "\"-5 in\"", "$.edition.page.width", "1 mm to 10 m" },
        { "edition.page.width", "\"5.5\"", "$.edition.page.width", "with its unit" },
        { "edition.page.width", "5.5", "$.edition.page.width", "with its unit" },
        { "edition.page.width", "\"5.5 g\"", "$.edition.page.width", "with its unit" },
        { "edition.page.width", "\"5 1/0 in\"", "$.edition.page.width", "with its unit" },
        { "edition.page.width", "\"1e2 mm\"", "$.edition.page.width", "with its unit" },
        { "edition.page.depth", "\"1 mm\"", "$.edition.page.depth", "not known here" },
        { "edition.binding", "(gone)", "$.edition.binding", "saddle, side, perfect or loose" },
        { "edition.binding", "\"sadle\"", "$.edition.binding", "Did you mean \"saddle\"?" },
        { "edition.binding", "\"Saddle\"", "$.edition.binding", "Did you mean \"saddle\"?" },
        { "edition.bleed", "1", "$.edition.bleed", "true or false" },
        { "edition.fold", "\"round\"", "$.edition.fold", "flat or rounded" },
        { "edition.trim.head", "\"-0.125 in\"", "$.edition.trim.head", "from 0 mm" },
        { "edition.trim.foredge", "\"1 mm\"", "$.edition.trim.foredge", "Did you mean \"foreEdge\"?" },
        { "edition.printing", "0", "$.edition.printing", "the first printing is 1" },
        { "edition.title", "7", "$.edition.title", "text on one line" },
        { "edition.title", "\"a\\nb\"", "$.edition.title", "one line" },
        { "edition.parts", "[]", "$.edition.parts", "at least one" },
        { "edition.parts", "(gone)", "$.edition.parts", "required" },
        { "edition.parts.1", "4", "$.edition.parts[1]", "pages" },
        { "edition.parts.0.pages", "-4", "$.edition.parts[0].pages", "1 to 10,000" },
        { "edition.parts.0.pages", "(gone)", "$.edition.parts[0].pages", "required" },
        { "edition.parts.0.pages", "9980", "$.edition.parts", "at most 10,000 pages" },
        { "edition.parts.0.stock", "(gone)", "$.edition.parts[0].stock", "required" },
        { "edition.parts.0.stock", "\"silkcover\"", "$.edition.parts[0].stock", "Did you mean \"silk-cover\"?" },
        { "edition.parts.0.stock", "\"granite\"", "$.edition.parts[0].stock", "no stock with this id" },
        { "edition.parts.0.outside", "\"color\"", "$.edition.parts[0].outside", "Did you mean \"colour\"?" },
        { "edition.parts.0.sheet", "\"tabloid\"", "$.edition.parts[0].sheet", "no sheet with this id" },
        { "edition.fixedCosts.0.amount", "\"-1\"", "$.edition.fixedCosts[0].amount", "0 or more" },
        { "edition.fixedCosts", "{}", "$.edition.fixedCosts", "list" },
        { "edition.weighed", """{ "mass": "0 g" }""", "$.edition.weighed.mass", "above 0" },
        { "edition.weighed", """{ "thickness": "2 g" }""", "$.edition.weighed.thickness", "above 0" },
        { "stocks", "(gone)", "$.stocks", "required" },
        { "stocks", "[]", "$.stocks", "keys are the stocks' ids" },
        { "stocks.blue-text", "(gone)", "$.edition.parts[2].stock+$.shop.paper[2].stock", "no stock with this id" },
        { "stocks.silk-cover.weight", "(gone)", "$.stocks['silk-cover'].weight", "required" },
        { "stocks.silk-cover.weight", "\"80 lb\"", "$.stocks['silk-cover'].weight", "kind of paper" },
        { "stocks.silk-cover.weight", "\"0 gsm\"", "$.stocks['silk-cover'].weight", "1 to 10,000 g/m²" },
        { "stocks.silk-cover.weight", "80", "$.stocks['silk-cover'].weight", "with its unit" },
        { "stocks.silk-cover.caliper", "\"0 um\"", "$.stocks['silk-cover'].caliper", "above 0" },
        { "stocks.silk-cover.finish", "\"glossy\"", "$.stocks['silk-cover'].finish", "coated or uncoated" },
        { "stocks.silk-cover", """{ "weight": "90 gsm" }""", "$.stocks['silk-cover']", "a caliper, a bulk or a finish" },
        { "stocks.cream-text.bulk", "0", "$.stocks['cream-text'].bulk", "above 0" },
        { "stocks.cream-text.bulk", "\"1,3\"", "$.stocks['cream-text'].bulk", "such as 1.3" },
        { "shop", "(gone)", "$.shop", "required" },
        { "shop.validFrom", "(gone)", "$.shop.validFrom", "required" },
        { "shop.validFrom", "20260101", "$.shop.validFrom", "year-month-day" },
        { "shop.sheets", "(gone)", "$.shop.sheets", "unless it has bookPrices" },
        { "shop.print", "(gone)", "$.shop.print", "required" },
        { "shop.sheets.tabloid-plus.width", "\"0.5 mm\"", "$.shop.sheets['tabloid-plus'].width", "1 mm to 10 m" },
        { "shop.sheets.tabloid-plus.height", "(gone)", "$.shop.sheets['tabloid-plus'].height", "required" },
        { "shop.sheets.tabloid-plus.grain", "\"long\"", "$.shop.sheets['tabloid-plus'].grain", "any or parallelToSpine" },
        { "shop.sheets.tabloid-plus.margin", "\"-1 mm\"", "$.shop.sheets['tabloid-plus'].margin", "from 0 mm" },
        { "shop.print.0.ink", "\"none\"", "$.shop.print[0].ink", "colour or black" },
        { "shop.print.0.sheet", "\"a3\"", "$.shop.print[0].sheet", "no sheet with this id" },
        { "shop.print.1.ink", "\"colour\"", "$.shop.print[1]", "already" },
        { "shop.print.0.steps", "[]", "$.shop.print[0].steps", "at least one" },
        { "shop.print.0.steps", "(gone)", "$.shop.print[0].steps", "required" },
        { "shop.print.0.steps.0.from", "2", "$.shop.print[0].steps[0].from", "begin at 1" },
        { "shop.print.0.steps.0.from", "0", "$.shop.print[0].steps[0].from", "whole number from 1" },
        { "shop.print.0.steps.1.from", "1", "$.shop.print[0].steps[1].from", "Steps must rise" },
        { "shop.print.0.steps.1.from", "500.5", "$.shop.print[0].steps[1].from", "whole number" },
        { "shop.print.0.steps.0.each", "(gone)", "$.shop.print[0].steps[0].each", "required" },
        { "shop.print.0.steps.0.each", "\"free\"", "$.shop.print[0].steps[0].each", "decimal string" },
        { "shop.print.0.steps.0.each", "\"0,40\"", "$.shop.print[0].steps[0].each", "decimal string" },
        { "shop.print.0.steps.0.each", "1e400", "$.shop.print[0].steps[0].each", "amount of money" },
        { "shop.print.0.steps.0.each", "0.12345678901234567890123456789012", "$.shop.print[0].steps[0].each", "amount of money" },
        { "shop.print.0.rule", "\"all\"", "$.shop.print[0].rule", "allUnits or incremental" },
        { "shop.paper.0.stock", "\"cream-text\"", "$.shop.paper[1]", "already" },
        { "shop.paper.0.stock", "\"granite\"", "$.shop.paper[0].stock", "no stock with this id" },
        { "shop.bookPrices", """[ { "binding": "saddle", "pagesFrom": 64, "pagesTo": 8, "steps": [ { "from": 1, "each": 1 } ] } ]""", "$.shop.bookPrices[0].pagesTo", "fewest" },
        { "shop.bookPrices", """[ { "binding": "saddle", "steps": [ { "from": 1 } ] } ]""", "$.shop.bookPrices[0].steps[0].each", "needs a price" },
        { "shop.bookPrices", """[ { "binding": "saddle", "stocks": ["granite"], "steps": [ { "from": 1, "each": 1 } ] } ]""", "$.shop.bookPrices[0].stocks[0]", "no stock" },
        { "shop.quantities", "[25, 25]", "$.shop.quantities[1]", "rise" },
        { "shop.quantities", "[0, 25]", "$.shop.quantities[0]", "whole number" },
        { "shop.setup.order", "-5", "$.shop.setup.order", "0 or more" },
        { "shop.finishing.0.per", "(gone)", "$.shop.finishing[0].per", "copy, sheet, piece, cut or edition" },
        { "shop.collates", "true", "$.shop.collates", "always, sameStock or never" },
        { "shop.layout", "\"cutAndStak\"", "$.shop.layout", "Did you mean \"cutAndStack\"?" },
        { "shop.spoilage", "1", "$.shop.spoilage", "not including 1" },
        { "shop.delivers", "\"books\"", "$.shop.delivers", "trimmedCopies" },
        { "shop.order.discounts.0.rate", "5", "$.shop.order.discounts[0].rate", "fraction from 0 to 1" },
        { "shop.order.discounts.0.from", "(gone)", "$.shop.order.discounts[0].from", "required" },
        { "shop.order.delivery.steps.1.most", "\"2 kg\"", "$.shop.order.delivery.steps[1].most", "more than 2000 g" },
        { "shop.order.delivery.steps.0.price", "(gone)", "$.shop.order.delivery.steps[0].price", "required" },
        { "shop.order.delivery", "{}", "$.shop.order.delivery.steps", "required" },
        { "shop.order.carton.capacity", "\"0 kg\"", "$.shop.order.carton.capacity", "at least 1 g" },
        { "shop.order.carton.capacity", "(gone)", "$.shop.order.carton.capacity", "required" },
        { "shop.order.taxRate", "-0.06", "$.shop.order.taxRate", "0 to 1" },
        { "shop.order.leadDays", "-1", "$.shop.order.leadDays", "0 to 10,000" },
        { "bench.steps.1.spoilage", "1.0", "$.bench.steps[1].spoilage", "not including 1" },
        { "bench.steps.3.copiesPerPile", "0", "$.bench.steps[3].copiesPerPile", "from 1" },
        { "bench.steps.0.secondsPerPiece", "-2", "$.bench.steps[0].secondsPerPiece", "from 0" },
        { "bench.overs.mode", "\"sure\"", "$.bench.overs.mode", "plain or assured" },
        { "bench.overs.confidence", "1", "$.bench.overs.confidence", "both excluded" },
        { "bench.overs.confidence", "0", "$.bench.overs.confidence", "both excluded" },
        { "bench.fittingsMass", "\"-1 g\"", "$.bench.fittingsMass", "from 0 g" },
        { "mailers.0.id", "(gone)", "$.mailers[0].id+$.channels[1].mailer", "" },
        { "mailers.0.mass", "\"1 in\"", "$.mailers[0].mass", "a mass" },
        { "postage.1.id", "\"letter\"", "$.postage[1].id", "same validFrom" },
        { "postage.0.steps", "[]", "$.postage[0].steps", "at least one" },
        { "postage.0.validFrom", "\"yesterday\"", "$.postage[0].validFrom", "year-month-day" },
        { "postage.1.steps.2.most", "\"250 g\"", "$.postage[1].steps[2].most", "rise" },
        { "channels.1.id", "\"table\"", "$.channels[1].id", "already" },
        { "channels.0.id", "\" \"", "$.channels[0].id", "not blank" },
        { "channels.1.mailer", "\"boards\"", "$.channels[1].mailer", "Did you mean \"board\"?" },
        { "channels.2.tradeDiscount", "1.01", "$.channels[2].tradeDiscount", "0 to 1" },
        { "channels.2.feeRate", "1", "$.channels[2].feeRate", "not including 1" },
        { "channels.0.taxRate", "6", "$.channels[0].taxRate", "0.05 is five per cent" },
        { "channels.0.copiesPerOrder", "0", "$.channels[0].copiesPerOrder", "from 1" },
        { "channels.0.mix", "-1", "$.channels[0].mix", "0 or more" },
        { "ladder.to", "24", "$.ladder.to", "at 25, or above" },
        { "ladder.step", "0", "$.ladder.step", "from 1" },
        { "ladder", """{ "from": 1, "to": 1000000, "step": 99 }""", "$.ladder.step", "at most 10,000 quantities" },
        { "ladder.from", "(gone)", "$.ladder.from", "required" },
    };

    [Theory]
    [MemberData(nameof(BadInput))]
    public void Refuses_with_the_path_and_the_rule(string place, string json, string path, string rule)
    {
        var refused = Example.Read(Example.With(place, json));

        Assert.False(refused.Succeeded);
        Assert.Equal(path, string.Join('+', refused.Problems.Select(problem => problem.Path)));
        Assert.Contains(rule, refused.Problems[0].Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void A_problem_says_what_stands_there()
    {
        Assert.Equal("-4", Assert.Single(Example.Read(Example.With("edition.parts.0.pages", "-4")).Problems).Value);
        Assert.Equal("0 in", Assert.Single(Example.Read(Example.With("edition.page.width", "\"0 in\"")).Problems).Value);
        Assert.Null(Assert.Single(Example.Read(Example.With("quantity", "(gone)")).Problems).Value);
    }

    [Fact]
    public void A_key_that_stands_twice_is_refused_with_its_path()
    {
        var text = Example.Job().ToJsonString().Replace("\"bleed\":true", "\"bleed\":true,\"bleed\":false", StringComparison.Ordinal)
            .Replace("\"silk-cover\":{", "\"cream-text\":{},\"silk-cover\":{", StringComparison.Ordinal);

        Assert.Equal(
            [("$.stocks['cream-text']", true), ("$.edition.bleed", true)],
            Example.Read(text).Problems.Where(problem => problem.Rule.Contains("twice")).Select(problem => (problem.Path, true)));
    }

    [Theory]
    [InlineData("", "line 1, column 1")]
    [InlineData("{\n  \"schema\": \"pressrun/job/1\",\n  \"date\" 5\n}", "line 3, column 10")]
    [InlineData("{\n \"é\": 1,, }", "line 2, column 9")]
    [InlineData("{ \"title\": \"\\ud800\" }", "line 1, column 12")]
    [InlineData("{} // note", "line 1, column 4")]
    public void Text_that_is_no_json_is_refused_with_line_and_column(string text, string place)
    {
        var problem = Assert.Single(Example.Read(text).Problems);

        Assert.Equal("$", problem.Path);
        Assert.Contains(place, problem.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_that_is_not_utf8_is_refused_and_a_byte_order_mark_is_not()
    {
        Assert.Contains("UTF-8", Assert.Single(JobReader.Read(new byte[] { (byte)'{', (byte)'"', 0xFF, (byte)'"' }).Problems).Rule, StringComparison.Ordinal);
        Assert.True(JobReader.Read((byte[])[0xEF, 0xBB, 0xBF, .. Example.Bytes("job")]).Succeeded);
    }

    [Fact]
    public void A_file_too_large_or_nested_too_deep_is_refused()
    {
        Assert.Contains("larger than", Assert.Single(JobReader.Read(new byte[JobRules.MostBytes + 1]).Problems).Rule, StringComparison.Ordinal);
        Assert.Contains("32 levels", Assert.Single(Example.Read(new string('[', 40) + new string(']', 40)).Problems).Rule, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("null")]
    [InlineData("5")]
    [InlineData("[]")]
    [InlineData("\"pressrun/job/1\"")]
    public void A_document_that_is_no_object_is_refused(string text) =>
        Assert.Equal("$", Assert.Single(Example.Read(text).Problems).Path);

    [Theory]
    [InlineData("edition.parts", "$.edition.parts", "at most 200")]
    [InlineData("shop.print", "$.shop.print", "at most 500")]
    [InlineData("shop.paper", "$.shop.paper", "at most 2000")]
    [InlineData("shop.quantities", "$.shop.quantities", "at most 10000")]
    [InlineData("shop.print.0.steps", "$.shop.print[0].steps", "at most 500")]
    [InlineData("channels", "$.channels", "at most 100")]
    [InlineData("postage", "$.postage", "at most 500")]
    public void A_list_without_end_is_refused_as_a_whole(string place, string path, string rule)
    {
        var entries = string.Join(',', Enumerable.Repeat("{}", 10_001));
        var problem = Assert.Single(Example.Read(Example.With(place, $"[{entries}]")).Problems);

        Assert.Equal((path, "10001 entries"), (problem.Path, problem.Value));
        Assert.Contains(rule, problem.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void The_list_of_problems_ends_somewhere()
    {
        var text = Example.Job().ToJsonString();
        var keys = string.Concat(Enumerable.Range(0, 2000).Select(number => $"\"key {number}\":0,"));
        var problems = Example.Read("{" + keys + text[1..]).Problems;

        Assert.Equal(101, problems.Count);
        Assert.StartsWith("1900 more problems", problems[^1].Rule, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{0}:0,")]
    [InlineData("{0}:0,{0}:0,")]
    [InlineData("\"title\":{0},")]
    public void A_text_as_long_as_the_file_is_quoted_by_its_beginning(string member)
    {
        var endless = '"' + new string('k', 300_000) + '"';
        var problems = Example.Read("{" + member.Replace("{0}", endless, StringComparison.Ordinal) + Example.Job().ToJsonString()[1..]).Problems;

        Assert.NotEmpty(problems);
        Assert.InRange(problems.Sum(problem => problem.ToString().Length), 1, 2000);
        Assert.All(problems, problem => Assert.InRange(problem.Value?.Length ?? 0, 0, 81));
    }

    [Fact]
    public void A_path_through_the_longest_id_is_whole()
    {
        var id = new string('s', 200);
        var problem = Assert.Single(Example.Read(Example.With("stocks", $$"""{ "{{id}}": 1 }""")).Problems, problem => problem.Path.Contains("sss", StringComparison.Ordinal));

        Assert.Equal($"$.stocks.{id}", problem.Path);
    }
}
