using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;

namespace PressRun.Web.RunPlans;

/// <summary>All that a page says of a run at one quantity.</summary>
/// <param name="Estimate">The costing.</param>
/// <param name="Outlook">What lies just ahead.</param>
/// <param name="Money">The landed cost, cut as it is spent.</param>
/// <param name="Better">More copies for no more money, where there are.</param>
public sealed record RunAnswer(Estimate Estimate, Outlook Outlook, MoneyCut Money, BetterBuy? Better);
