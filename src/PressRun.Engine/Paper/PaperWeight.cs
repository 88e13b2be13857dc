using PressRun.Engine.Measures;

namespace PressRun.Engine.Paper;

/// <summary>A kind of paper by the basic size on which its US basis weight rests.</summary>
public enum PaperCategory
{
    /// <summary>Bond, writing and ledger: 17 × 22 in.</summary>
    Bond,

    /// <summary>Text, book and offset: 25 × 38 in.</summary>
    Text,

    /// <summary>Cover: 20 × 26 in.</summary>
    Cover,

    /// <summary>Index: 25.5 × 30.5 in.</summary>
    Index,

    /// <summary>Tag: 24 × 36 in.</summary>
    Tag,

    /// <summary>Bristol: 22.5 × 28.5 in.</summary>
    Bristol,
}

/// <summary>
/// The weight of a paper as its maker states it: a grammage in g/m² (ISO 536), or a US basis weight, the mass in pounds of
/// 500 sheets of the category's basic size. Kept as stated, so that "80 lb cover" is shown as such; the default is zero.
/// </summary>
public readonly record struct PaperWeight
{
    /// <summary>Sheets of the basic size that a basis weight weighs: one ream.</summary>
    public const decimal SheetsPerReam = 500m;

    private const decimal SquareMetresPerSquareInch = 0.0254m * 0.0254m;

    private PaperWeight(decimal stated, PaperCategory? category)
    {
        Stated = stated;
        Category = category;
        GramsPerSquareMetre = category is { } kind
            ? stated * Mass.GramsPerPound / (SheetsPerReam * BasicSize(kind).Width.Inches * BasicSize(kind).Height.Inches * SquareMetresPerSquareInch)
            : stated;
    }

    /// <summary>The number as stated: g/m² without a category, otherwise pounds a ream.</summary>
    public decimal Stated { get; }

    /// <summary>The category whose basic size the stated pounds rest on; null for a grammage.</summary>
    public PaperCategory? Category { get; }

    /// <summary>Grammage in g/m²: lb × 453.59237 / (500 × area of the basic size in m²), not rounded.</summary>
    public decimal GramsPerSquareMetre { get; }

    /// <summary>A grammage of <paramref name="gramsPerSquareMetre"/> g/m².</summary>
    public static PaperWeight FromGrammage(decimal gramsPerSquareMetre) => new(gramsPerSquareMetre, null);

    /// <summary>A basis weight of <paramref name="pounds"/> lb a ream of the basic size of <paramref name="category"/>.</summary>
    public static PaperWeight FromBasisWeight(decimal pounds, PaperCategory category) => new(pounds, category);

    /// <summary>The basic size of a category (US trade custom, as printed in paper makers' tables).</summary>
    /// <param name="category">The kind of paper.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is none of the kinds.</exception>
    public static (Length Width, Length Height) BasicSize(PaperCategory category) => category switch
    {
        PaperCategory.Bond => Inches(17m, 22m),
        PaperCategory.Text => Inches(25m, 38m),
        PaperCategory.Cover => Inches(20m, 26m),
        PaperCategory.Index => Inches(25.5m, 30.5m),
        PaperCategory.Tag => Inches(24m, 36m),
        PaperCategory.Bristol => Inches(22.5m, 28.5m),
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "Not a paper category."),
    };

    private static (Length Width, Length Height) Inches(decimal width, decimal height) => (Length.FromInches(width), Length.FromInches(height));
}
