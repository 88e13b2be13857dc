using PressRun.Engine.Costing;
using PressRun.Engine.Editions;

namespace PressRun.Engine.Bench;

/// <summary>Which work a binding takes, and which a name means.</summary>
public static class Work
{
    // By what a name contains, in this order: "fold flat under weight" is a fold.
    private static readonly (string Word, WorkKind Kind)[] Words =
    [
        ("apart", WorkKind.CutApart), ("slit", WorkKind.CutApart), ("to size", WorkKind.CutApart), ("score", WorkKind.Score), ("creas", WorkKind.Score),
        ("collat", WorkKind.Collate), ("gather", WorkKind.Collate), ("jog", WorkKind.Jog), ("stapl", WorkKind.Staple), ("stitch", WorkKind.Staple),
        ("sew", WorkKind.Staple), ("glue", WorkKind.Glue), ("gluing", WorkKind.Glue), ("fold", WorkKind.Fold), ("trim", WorkKind.Trim), ("cut", WorkKind.Trim),
        ("pack", WorkKind.Pack), ("press", WorkKind.Press), ("weight", WorkKind.Press),
    ];

    /// <summary>The kind that a step's name means; other where it means none that is known.</summary>
    /// <param name="name">As the press calls the step. English words are known, in upper and lower case.</param>
    public static WorkKind Named(string name) => Mentioned(name).FirstOrDefault(WorkKind.Other);

    /// <summary>Every kind that a shop's operation means, which may be sold as one, such as "stitch and fold". What a shop guillotines are sheets, and so is
    /// what it says it cuts by that name.</summary>
    /// <param name="operation">As the shop calls it, read likewise.</param>
    public static IReadOnlyList<WorkKind> Sold(string operation) =>
        Has(operation, "guillotin") ? [WorkKind.CutApart, .. Mentioned(operation)]
        : CutsSheets(operation) ? [WorkKind.CutApart, .. Mentioned(operation).Where(kind => kind != WorkKind.CutApart && (kind != WorkKind.Trim || Has(operation, "trim")))]
        : Mentioned(operation);

    /// <summary>Every kind that the operations mean which a shop does for a run.</summary>
    /// <param name="shop">The shop, with the finishing that it does for the run.</param>
    public static IReadOnlyList<WorkKind> SoldBy(Shop shop) => [.. shop.Finishing.SelectMany(operation => Sold(operation.Name))];

    private static List<WorkKind> Mentioned(string name)
    {
        var kinds = Words.Where(word => Has(name, word.Word)).Select(word => word.Kind).Distinct().ToList();
        if (Has(name, "spine") && TrimsIt(name, kinds))
        {
            kinds.Insert(0, WorkKind.TrimSpine);
        }

        var particular = kinds.Any(kind => kind is WorkKind.TrimSpine or WorkKind.CutApart);
        return particular ? [.. kinds.Where(kind => kind != WorkKind.Trim)] : kinds;
    }

    // "Glue the spine" trims none: a spine is trimmed where the name says so, or names no other work.
    private static bool TrimsIt(string name, List<WorkKind> kinds) =>
        kinds.Count == 0 || Has(name, "trim") || (kinds.Contains(WorkKind.Trim) && !kinds.Contains(WorkKind.CutApart));

    private static bool CutsSheets(string operation) => Has(operation, "sheet") && Has(operation, "cut");

    private static bool Has(string name, string word) => name.Contains(word, StringComparison.OrdinalIgnoreCase);

    /// <summary>The work of a binding in the order in which it is done (common practice): folded sheets are stapled flat and folded after; a spine trim
    /// comes before binding.</summary>
    /// <param name="binding">The edition's binding.</param>
    public static IReadOnlyList<WorkKind> Order(Binding binding) => binding switch
    {
        Binding.Saddle =>
            [WorkKind.CutApart, WorkKind.Score, WorkKind.Collate, WorkKind.Jog, WorkKind.Staple, WorkKind.Fold, WorkKind.Press, WorkKind.Trim, WorkKind.Pack],
        Binding.Side =>
            [WorkKind.CutApart, WorkKind.Collate, WorkKind.Jog, WorkKind.TrimSpine, WorkKind.Staple, WorkKind.Press, WorkKind.Trim, WorkKind.Pack],
        Binding.Perfect =>
            [
                WorkKind.CutApart, WorkKind.Score, WorkKind.Collate, WorkKind.Jog, WorkKind.TrimSpine, WorkKind.Glue, WorkKind.Press, WorkKind.Trim,
                WorkKind.Pack,
            ],
        _ => [WorkKind.CutApart, WorkKind.Collate, WorkKind.Jog, WorkKind.Trim, WorkKind.Pack],
    };
}
