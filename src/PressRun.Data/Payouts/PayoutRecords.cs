using PressRun.Engine.Quoting;

namespace PressRun.Data.Payouts;

/// <summary>Who is promised what of a printing's sales.</summary>
/// <param name="EditionId">The printing.</param>
/// <param name="Claims">May be empty: then all is the press's.</param>
/// <param name="Version">Row version that a save must carry; 0 where nothing was saved yet.</param>
public sealed record EditionClaims(Guid EditionId, IReadOnlyList<Claim> Claims, uint Version);

/// <summary>A payment to be written down.</summary>
/// <param name="Id">Given by whoever writes it down, once: sent again it is not written again.</param>
/// <param name="EditionId">The printing.</param>
/// <param name="Paid">To whom, when and how much; below 0 was paid back.</param>
public sealed record NewPayment(Guid Id, Guid EditionId, PaidOut Paid);

/// <summary>A payment as it was written down; it never changes.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Paid">To whom, when and how much.</param>
/// <param name="By">Who wrote it down.</param>
/// <param name="WrittenAt">When it was written down.</param>
public sealed record PaymentRecord(Guid Id, PaidOut Paid, string By, DateTimeOffset WrittenAt);

/// <summary>All about the payouts of a printing.</summary>
/// <param name="Claims">Who is promised what.</param>
/// <param name="Payments">What was paid, the first day first.</param>
public sealed record EditionPayouts(EditionClaims Claims, IReadOnlyList<PaymentRecord> Payments);
