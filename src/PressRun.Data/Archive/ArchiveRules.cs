using PressRun.Data.Bench;
using PressRun.Data.Fixes;
using PressRun.Data.Payouts;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>
/// Holds an archive that can be read to the rules by which people's own writing is stored, so that no press comes in that could not have been typed here. An archive may have been
/// made by anybody: its fingerprints are worked out by whoever likes.
/// </summary>
internal static class ArchiveRules
{
    /// <summary>Notes what is wrong.</summary>
    public static void Check(PressArchive archive, JsonPath at, ProblemList problems)
    {
        problems.AddAll(at.Member("press"), PressStore.Problems(archive.Press.Name, archive.Press.Currency));
        foreach (var stock in archive.Stocks)
        {
            problems.AddAll(at.Member("stocks").Member(stock.Item.Id), [.. LibraryRules.Still("$", stock.Item.Id), .. LibraryRules.Named(stock.Item.Name)]);
        }

        CheckNames("mailers", archive.Mailers, mailer => [.. LibraryRules.Still("$.id", mailer.Id), .. LibraryRules.Named(mailer.Name)]);
        CheckNames("postage", archive.Postage, service => [.. LibraryRules.Still("$.id", service.Id), .. LibraryRules.Named(service.Name), .. PostageServiceStore.RegionProblems(service)]);
        CheckNames("channels", archive.Channels, channel => [.. LibraryRules.Still("$.id", channel.Id), .. LibraryRules.Named(channel.Name), .. ChannelStore.RegionProblems(channel)]);
        problems.AddAll(at.Member("bench"), BenchStore.NameProblems(archive.Bench));
        foreach (var (place, shop) in archive.Shops.Index())
        {
            CheckShop(shop, at.Member("shops").Item(place), problems);
        }

        foreach (var (place, title) in archive.Titles.Index())
        {
            CheckTitle(title, at.Member("titles").Item(place), problems);
        }

        QuoteArchiveRules.Check(archive.Quotes, at.Member("quotes"), problems);

        void CheckNames<T>(string section, IReadOnlyList<Kept<T>> things, Func<T, IEnumerable<Problem>> found)
        {
            foreach (var (place, thing) in things.Index())
            {
                problems.AddAll(at.Member(section).Item(place), found(thing.Item));
            }
        }
    }

    /// <summary>Notes problems of a thing that stands somewhere in the archive.</summary>
    public static void AddAll(this ProblemList problems, JsonPath at, IEnumerable<Problem> found)
    {
        foreach (var problem in found)
        {
            problems.Add(JsonPath.StartingAt(at + problem.Path[1..]), problem.Value, problem.Rule);
        }
    }

    private static void CheckShop(ArchivedShop shop, JsonPath at, ProblemList problems)
    {
        problems.AddAll(at, LibraryRules.Named(shop.Name));
        foreach (var (place, list) in shop.PriceLists.Index())
        {
            problems.AddAll(at.Member("priceLists").Item(place), PriceListStore.NameProblems(list));
        }

        if (!SearchText.IsSlug(shop.Id))
        {
            problems.Add(at.Member("id"), shop.Id, "Write a shop's id in small letters without accents, digits and hyphens, at most 200 characters: it stands in addresses.");
        }
    }

    private static void CheckTitle(ArchivedTitle title, JsonPath at, ProblemList problems)
    {
        problems.AddAll(at, TitleStore.Problems(new TitleRecord(Guid.Empty, title.Id, title.Title, title.By, title.Colour, title.About, title.Archived, 0)));
        foreach (var (place, edition) in title.Editions.Index())
        {
            CheckEdition(edition, at.Member("editions").Item(place), problems);
        }
    }

    private static void CheckEdition(ArchivedEdition edition, JsonPath at, ProblemList problems)
    {
        problems.AddAll(at, EditionRules.PartNames([.. edition.Edition.Parts.Select(part => part.Name)]));
        problems.AddAll(at, EditionRules.SheetNames(edition.Edition.Parts));
        problems.AddAll(at, EditionRules.CostNames(edition.Edition.FixedCosts));
        problems.AddAll(at.Member("claims"), PayoutStore.Problems(edition.Claims));
        MovementArchiveRules.Check(edition.Movements, at.Member("movements"), problems);
        TallyArchiveRules.Check(edition, at.Member("tallies"), problems);
        foreach (var (place, plan) in edition.Plans.Index())
        {
            var path = at.Member("plans").Item(place);
            problems.AddAll(path, PlanRules.NameProblems(plan.Name));
            problems.AddAll(path, plan.Reprint is { } reprint ? DemandDistribution.Of(reprint.Request.Demand).Problems : []);
        }

        foreach (var (place, fix) in edition.Fixes.Index())
        {
            var note = FixNote.Noticed(Guid.Empty, fix.Text, fix.Page) with { MendedIn = fix.MendedIn, CarriedPast = fix.CarriedPast };
            problems.AddAll(at.Member("fixes").Item(place), FixNoteStore.Problems(note, edition.Edition.Printing));
        }

        foreach (var (place, payment) in edition.Payments.Index())
        {
            var path = at.Member("payments").Item(place);
            problems.AddAll(path, PayoutStore.ProblemOf(new PaidOut(payment.Name, payment.Day, payment.Amount)) is { } problem ? [problem] : []);
            problems.AddAll(path, LibraryRules.Still("$.by", payment.By));
        }
    }
}
